using System.Runtime.Versioning;
using Npgsql;

namespace Catalogue.Data.LocalPostgres;

/// <summary>
/// The catalogue's own PostgreSQL: made from the machine's binaries inside the data folder, reached over a Unix socket
/// only, and stopped by the program that started or adopted it. Source: house rule, <c>docs/decisions/0002-own-postgresql.md</c>.
/// </summary>
public sealed class LocalPostgresServer : IAsyncDisposable
{
    private readonly Cluster _cluster;
    private readonly DataFolderLock? _lock;
    private bool _disposed;

    [SupportedOSPlatform("linux")]
    internal LocalPostgresServer(Cluster cluster, string socketFolder, DataFolderLock? dataFolderLock)
    {
        _cluster = cluster;
        _lock = dataFolderLock;
        Binaries = cluster.Binaries;
        ClusterFolder = cluster.Folder;
        SocketFolder = socketFolder;
    }

    /// <summary>The programs that belong to the server, <c>pg_dump</c> among them where the machine has it.</summary>
    public PostgresBinaries Binaries { get; }

    /// <summary>Absolute path of the server's own files, symbolic links resolved.</summary>
    public string ClusterFolder { get; }

    /// <summary>Absolute path of the folder with the server's socket: the <c>Host</c> of the connection string.</summary>
    public string SocketFolder { get; }

    /// <summary>True when another program runs the server and <see cref="DisposeAsync"/> leaves it running.</summary>
    public bool IsJoined => _lock is null;

    /// <summary>
    /// Makes the cluster on first use, starts the server or adopts the one a killed program left behind, and makes sure of
    /// the role and the database <c>catalogue</c>. Returns once the server answers; replaying the log after a crash may
    /// take minutes.
    /// </summary>
    /// <exception cref="OperationCanceledException">Cancelled; a server that had been started has been stopped again.</exception>
    public static Task<LocalPostgresStart> StartAsync(LocalPostgresOptions options, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(options);
        return OperatingSystem.IsLinux()
            ? new Starting(options).RunAsync(cancellationToken)
            : Task.FromResult<LocalPostgresStart>(new LocalPostgresStart.Refused(
                "The catalogue runs a PostgreSQL of its own on Linux only.",
                "Install PostgreSQL 15 or later and give the catalogue its connection string (ConnectionStrings__Catalogue)."));
    }

    /// <summary>
    /// Stops a server that a killed program left running on a data folder. True when nothing runs there any more; false
    /// when a living program holds the folder, or its database cannot be reached with what this machine has.
    /// </summary>
    public static Task<bool> StopLeftBehindAsync(LocalPostgresOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        return OperatingSystem.IsLinux() ? new Starting(options).StopLeftBehindAsync() : Task.FromResult(true);
    }

    /// <summary>Stops the server, waiting for its last checkpoint; a joined server is left alone. Open connections are cut.</summary>
    public async ValueTask DisposeAsync()
    {
        if (_disposed)
            return;
        _disposed = true;
        if (_lock is null || !OperatingSystem.IsLinux())
            return;
        try
        {
            await _cluster.StopAsync();
            LocalPostgres.SocketFolder.Remove(SocketFolder);
        }
        finally
        {
            _lock.Dispose();
        }
    }

    internal static string ConnectionString(string socketFolder, int port, string role, string password, string database, bool pooling) =>
        new NpgsqlConnectionStringBuilder
        {
            Host = socketFolder,
            Port = port,
            Username = role,
            Password = password,
            Database = database,
            Pooling = pooling,
            // Both are for the network; over a socket they only cost a failed attempt, or heed a stray environment variable.
            GssEncryptionMode = GssEncryptionMode.Disable,
            SslMode = SslMode.Disable,
        }.ConnectionString;
}
