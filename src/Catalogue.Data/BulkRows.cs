using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;
using Microsoft.EntityFrameworkCore.Storage;
using Npgsql;
using NpgsqlTypes;

namespace Catalogue.Data;

/// <summary>
/// Writes many rows of one table by COPY, in the transaction of the context. Columns and conversions are those of the mapping; triggers and constraints hold as
/// for any insert. The rows are not tracked: whoever reads them afterwards asks the database.
/// </summary>
internal static class BulkRows
{
    /// <summary>Writes the rows; how many there were.</summary>
    public static async Task<int> WriteAsync<T>(this CatalogueContext context, IReadOnlyCollection<T> rows, CancellationToken cancellationToken)
        where T : class
    {
        if (rows.Count == 0)
            return 0;
        var entity = context.Model.FindEntityType(typeof(T)) ?? throw new InvalidOperationException($"{typeof(T).Name} is no row of this database.");
        var columns = entity.GetProperties().Where(property => !property.ValueGenerated.HasFlag(ValueGenerated.OnUpdate)).Select(property => new Column(property, entity)).ToList();
        var connection = (NpgsqlConnection)context.Database.GetDbConnection();
        if (context.Database.CurrentTransaction is null)
            throw new InvalidOperationException("Many rows are written in a transaction, all of them or none.");
        var sql = $"copy {entity.GetTableName()} ({string.Join(", ", columns.Select(column => column.Name))}) from stdin (format binary)";
        await using var writer = await connection.BeginBinaryImportAsync(sql, cancellationToken);
        foreach (var row in rows)
        {
            await writer.StartRowAsync(cancellationToken);
            foreach (var column in columns)
            {
                if (column.Of(row) is { } value)
                    await writer.WriteAsync(value, column.Type, cancellationToken);
                else
                    await writer.WriteNullAsync(cancellationToken);
            }
        }

        return (int)await writer.CompleteAsync(cancellationToken);
    }

    private sealed class Column
    {
        private readonly IClrPropertyGetter _getter;
        private readonly Func<object?, object?>? _convert;

        public Column(IProperty property, IEntityType entity)
        {
            var mapping = (RelationalTypeMapping)property.GetTypeMapping();
            Name = property.GetColumnName(StoreObjectIdentifier.Table(entity.GetTableName()!, entity.GetSchema()))!;
            Type = TypeOf(mapping);
            _getter = property.GetGetter();
            _convert = mapping.Converter?.ConvertToProvider;
        }

        public string Name { get; }

        public NpgsqlDbType Type { get; }

        public object? Of(object row)
        {
            var value = _getter.GetClrValue(row);
            value = value is null || _convert is null ? value : _convert(value);
            return value is DateTimeOffset moment ? moment.ToUniversalTime() : value;
        }

        private static NpgsqlDbType TypeOf(RelationalTypeMapping mapping) => mapping.StoreType switch
        {
            "uuid" => NpgsqlDbType.Uuid,
            "integer" => NpgsqlDbType.Integer,
            "smallint" => NpgsqlDbType.Smallint,
            "bigint" => NpgsqlDbType.Bigint,
            "boolean" => NpgsqlDbType.Boolean,
            "double precision" => NpgsqlDbType.Double,
            "jsonb" => NpgsqlDbType.Jsonb,
            "timestamp with time zone" => NpgsqlDbType.TimestampTz,
            "date" => NpgsqlDbType.Date,
            "text[]" => NpgsqlDbType.Array | NpgsqlDbType.Text,
            "text" => NpgsqlDbType.Text,
            "citext" => NpgsqlDbType.Citext,
            var text when text.StartsWith("character varying", StringComparison.Ordinal) => NpgsqlDbType.Varchar,
            var other => throw new InvalidOperationException($"Rows with a column of the type {other} cannot be written in bulk yet."),
        };
    }
}
