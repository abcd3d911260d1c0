using Catalogue.Data;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;

namespace Catalogue.Testing;

/// <summary>A migrated database of its own, and every query and change over it. Cloned from a template, so it costs a fraction of a second.</summary>
public sealed class CatalogueDatabaseFixture : IAsyncDisposable
{
    private readonly string _connectionString;
    private readonly ServiceProvider _services;

    private CatalogueDatabaseFixture(string connectionString, ServiceProvider services, TestClock clock)
    {
        _connectionString = connectionString;
        _services = services;
        Clock = clock;
    }

    /// <summary>Connection string of the database.</summary>
    public string ConnectionString => _connectionString;

    /// <summary>The clock that every change reads.</summary>
    public TestClock Clock { get; }

    /// <summary>The data source.</summary>
    public NpgsqlDataSource Source => Get<NpgsqlDataSource>();

    /// <summary>A migrated, empty database.</summary>
    public static async Task<CatalogueDatabaseFixture> CreateAsync()
    {
        var server = await PostgresTestServer.SharedAsync();
        var template = await server.TemplateAsync("migrated", MigrateAsync);
        var connectionString = await server.CreateDatabaseAsync(template);
        var clock = new TestClock();
        return new CatalogueDatabaseFixture(connectionString, Services(connectionString, clock), clock);
    }

    /// <summary>A query or a change.</summary>
    public T Get<T>()
        where T : notnull => _services.GetRequiredService<T>();

    /// <summary>A context, for looking at what is stored.</summary>
    public Task<CatalogueContext> ContextAsync() => Get<IDbContextFactory<CatalogueContext>>().CreateDbContextAsync();

    /// <summary>Runs plain SQL, as somebody with a database tool would.</summary>
    public async Task<int> SqlAsync(string sql)
    {
        await using var command = Source.CreateCommand(sql);
        return await command.ExecuteNonQueryAsync();
    }

    /// <summary>The first value of a query in plain SQL.</summary>
    public async Task<T> ScalarAsync<T>(string sql)
    {
        await using var command = Source.CreateCommand(sql);
        return (T)(await command.ExecuteScalarAsync())!;
    }

    /// <inheritdoc />
    public async ValueTask DisposeAsync()
    {
        await _services.DisposeAsync();
        await (await PostgresTestServer.SharedAsync()).DropDatabaseAsync(_connectionString);
    }

    private static ServiceProvider Services(string connectionString, TimeProvider clock)
    {
        var services = new ServiceCollection();
        services.AddLogging();
        services.AddSingleton(clock);
        services.AddSingleton(CatalogueDatabase.OpenDataSource(connectionString));
        services.AddCatalogueData();
        return services.BuildServiceProvider();
    }

    private static async Task MigrateAsync(string connectionString)
    {
        await using var services = Services(connectionString, TimeProvider.System);
        await CatalogueDatabase.MigrateAsync(services.GetRequiredService<IDbContextFactory<CatalogueContext>>());
    }
}
