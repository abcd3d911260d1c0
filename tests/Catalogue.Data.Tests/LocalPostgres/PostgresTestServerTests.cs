using Catalogue.Testing;
using Npgsql;

namespace Catalogue.Data.Tests.LocalPostgres;

public sealed class PostgresTestServerTests
{
    [Fact]
    public async Task CreateDatabaseAsync_FromTemplate_ClonesWhatItHoldsAndKeepsClonesApart()
    {
        var server = await PostgresTestServer.SharedAsync();
        var template = await server.TemplateAsync("numbers", connection => RunAsync(connection, "CREATE TABLE number (n integer); INSERT INTO number VALUES (1)"));
        var clones = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => server.CreateDatabaseAsync(template)));

        await RunAsync(clones[0], "INSERT INTO number VALUES (2)");
        Assert.Equal(2L, await CountAsync(clones[0]));
        Assert.Equal(1L, await CountAsync(clones[1]));

        foreach (var clone in clones)
            await server.DropDatabaseAsync(clone);
        var gone = await Assert.ThrowsAsync<PostgresException>(() => CountAsync(clones[0]));
        Assert.Equal(PostgresErrorCodes.InvalidCatalogName, gone.SqlState);
    }

    [Fact]
    public async Task TemplateAsync_AskedForTwiceAtOnce_IsFilledOnce()
    {
        var server = await PostgresTestServer.SharedAsync();
        var fills = 0;
        Task FillAsync(string connection)
        {
            Interlocked.Increment(ref fills);
            return RunAsync(connection, "SELECT 1");
        }

        var names = await Task.WhenAll(server.TemplateAsync("once", FillAsync), server.TemplateAsync("once", FillAsync));
        Assert.Equal(names[0], names[1]);
        Assert.Equal(1, fills);
    }

    private static async Task RunAsync(string connectionString, string sql)
    {
        await using var source = NpgsqlDataSource.Create(connectionString);
        await using var command = source.CreateCommand(sql);
        await command.ExecuteNonQueryAsync();
    }

    private static async Task<long> CountAsync(string connectionString)
    {
        await using var source = NpgsqlDataSource.Create(connectionString);
        await using var command = source.CreateCommand("SELECT count(*) FROM number");
        return (long)(await command.ExecuteScalarAsync())!;
    }
}
