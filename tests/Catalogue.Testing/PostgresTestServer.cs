using System.Collections.Concurrent;
using Catalogue.Data.LocalPostgres;
using Npgsql;

namespace Catalogue.Testing;

/// <summary>
/// One PostgreSQL per test process, without durability, behind a socket in the temp folder. It is started by the first
/// test that asks and stopped at the end of the process; what a killed run left behind is removed by the next one.
/// </summary>
public sealed class PostgresTestServer
{
    private const string FolderPrefix = "catalogue-tests-";

    private static readonly TimeSpan Settled = TimeSpan.FromMinutes(1);
    private static readonly Lazy<Task<PostgresTestServer>> Shared = new(StartAsync);

    private readonly LocalPostgresStart.Running _running;
    private readonly string _folder;
    private readonly ConcurrentDictionary<string, Lazy<Task<string>>> _templates = new(StringComparer.Ordinal);

    private PostgresTestServer(LocalPostgresStart.Running running, string folder)
    {
        _running = running;
        _folder = folder;
    }

    /// <summary>The programs of the server that runs, for tests of back-up and restore.</summary>
    public PostgresBinaries Binaries => _running.Server.Binaries;

    /// <summary>The server of this test process.</summary>
    public static Task<PostgresTestServer> SharedAsync() => Shared.Value;

    /// <summary>Connection string of a database on this server; its pool is the caller's to clear or dispose.</summary>
    public string ConnectionString(string database) => Connection(database, pooling: true);

    /// <summary>
    /// A database to clone, filled once per process: later calls of the same <paramref name="name"/> wait for the first.
    /// </summary>
    /// <param name="name">What is in it; any text.</param>
    /// <param name="fillAsync">Gets an unpooled connection string, so that nothing stays connected and holds up the clones.</param>
    /// <returns>The name to give to <see cref="CreateDatabaseAsync"/>.</returns>
    public Task<string> TemplateAsync(string name, Func<string, Task> fillAsync) =>
        _templates.GetOrAdd(name, _ => new Lazy<Task<string>>(() => MakeTemplateAsync(fillAsync))).Value;

    /// <summary>A new database, empty or a clone of a template. Returns its connection string.</summary>
    public async Task<string> CreateDatabaseAsync(string? template = null)
    {
        var database = NewName("t");
        await RunAsync(template is null ? $"CREATE DATABASE {database}" : $"CREATE DATABASE {database} TEMPLATE {template}");
        return ConnectionString(database);
    }

    /// <summary>Drops a database made by <see cref="CreateDatabaseAsync"/>, cutting what is still connected.</summary>
    public async Task DropDatabaseAsync(string connectionString)
    {
        await using (var pooled = new NpgsqlConnection(connectionString))
            NpgsqlConnection.ClearPool(pooled);
        await RunAsync($"DROP DATABASE IF EXISTS {new NpgsqlConnectionStringBuilder(connectionString).Database} WITH (FORCE)");
    }

    private static async Task<PostgresTestServer> StartAsync()
    {
        await RemoveLeftoversAsync();
        var folder = Directory.CreateTempSubdirectory(FolderPrefix).FullName;
        var start = await LocalPostgresServer.StartAsync(Options(folder));
        if (start is not LocalPostgresStart.Running running)
            throw new InvalidOperationException($"No PostgreSQL for the tests: {start}");

        var server = new PostgresTestServer(running, folder);
        AppDomain.CurrentDomain.ProcessExit += (_, _) => server.StopAsync().GetAwaiter().GetResult();
        return server;
    }

    private static LocalPostgresOptions Options(string folder) => new()
    {
        DataFolder = folder,
        Settings = new Dictionary<string, string>
        {
            ["fsync"] = "off",
            ["synchronous_commit"] = "off",
            ["full_page_writes"] = "off",
            // A worker of it in a database that is dropped belongs to another role, which may not be ended.
            ["autovacuum"] = "off",
        },
    };

    /// <summary>A folder whose program still runs is locked and stays; a killed program's server is adopted, to be stopped.</summary>
    private static async Task RemoveLeftoversAsync()
    {
        var now = TimeProvider.System.GetUtcNow().UtcDateTime;
        foreach (var folder in Directory.EnumerateDirectories(Path.GetTempPath(), FolderPrefix + "*"))
        {
            try
            {
                // A test process beside this one may have made its folder and not locked it yet.
                if (now - Directory.GetLastWriteTimeUtc(folder) > Settled && await LocalPostgresServer.StopLeftBehindAsync(Options(folder)))
                    RemoveFolder(folder);
            }
            catch (Exception notOurs) when (notOurs is IOException or UnauthorizedAccessException)
            {
                // Another account's run, or another process of this run that removes the same folder.
            }
        }
    }

    private static void RemoveFolder(string folder)
    {
        var cluster = new DirectoryInfo(Path.Combine(folder, "postgresql"));
        if (cluster is { LinkTarget: not null } && cluster.ResolveLinkTarget(returnFinalTarget: true) is DirectoryInfo { Exists: true } elsewhere)
            elsewhere.Delete(recursive: true);
        Directory.Delete(folder, recursive: true);
    }

    private static string NewName(string prefix) => $"{prefix}_{Guid.CreateVersion7():N}";

    private async Task<string> MakeTemplateAsync(Func<string, Task> fillAsync)
    {
        var database = NewName("template");
        await RunAsync($"CREATE DATABASE {database}");
        await fillAsync(Connection(database, pooling: false));
        // A stray connection would make every clone wait, and then fail.
        await RunAsync($"ALTER DATABASE {database} ALLOW_CONNECTIONS false");
        return database;
    }

    private string Connection(string database, bool pooling) =>
        new NpgsqlConnectionStringBuilder(_running.ConnectionString) { Database = database, Pooling = pooling }.ConnectionString;

    private async Task RunAsync(string sql)
    {
        await using var connection = new NpgsqlConnection(Connection("catalogue", pooling: false));
        await connection.OpenAsync();
        await using var command = new NpgsqlCommand(sql, connection);
        await command.ExecuteNonQueryAsync();
    }

    private async Task StopAsync()
    {
        NpgsqlConnection.ClearAllPools();
        await _running.Server.DisposeAsync();
        RemoveFolder(_folder);
    }
}
