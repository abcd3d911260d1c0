using Npgsql;

namespace Catalogue.Data.Questions;

/// <summary>Runs SQL written by hand, where the shape of a question or its plan is out of the mapper's reach.</summary>
internal static class Rows
{
    /// <summary>Reads all rows. Parameters stand as $1, $2 and so on, in their order.</summary>
    public static Task<List<T>> ReadAsync<T>(
        this NpgsqlConnection connection, string sql, Func<NpgsqlDataReader, T> read, CancellationToken cancellationToken, params SqlValue[] parameters) =>
        connection.ReadAsync(sql, parameters.Select(value => value.ToParameter()), read, cancellationToken);

    /// <summary>Reads all rows, the parameters given as such.</summary>
    public static async Task<List<T>> ReadAsync<T>(
        this NpgsqlConnection connection, string sql, IEnumerable<NpgsqlParameter> parameters, Func<NpgsqlDataReader, T> read, CancellationToken cancellationToken)
    {
        await using var command = new NpgsqlCommand(sql, connection);
        command.Parameters.AddRange(parameters.ToArray());
        await using var reader = await command.ExecuteReaderAsync(cancellationToken);
        var rows = new List<T>();
        while (await reader.ReadAsync(cancellationToken))
            rows.Add(read(reader));
        return rows;
    }

    /// <summary>Runs what answers nothing.</summary>
    public static async Task RunAsync(this NpgsqlConnection connection, string sql, CancellationToken cancellationToken)
    {
        await using var command = new NpgsqlCommand(sql, connection);
        await command.ExecuteNonQueryAsync(cancellationToken);
    }

    /// <summary>The text of a column, or null.</summary>
    public static string? Text(this NpgsqlDataReader row, int column) => row.IsDBNull(column) ? null : row.GetString(column);

    /// <summary>The texts of a column, none where it is null.</summary>
    public static IReadOnlyList<string> Texts(this NpgsqlDataReader row, int column) => row.IsDBNull(column) ? [] : row.GetFieldValue<string[]>(column);
}
