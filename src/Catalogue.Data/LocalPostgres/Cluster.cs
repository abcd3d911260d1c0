using System.Globalization;
using System.Runtime.Versioning;
using Npgsql;

namespace Catalogue.Data.LocalPostgres;

/// <summary>PostgreSQL's files in one folder, with the programs and the account that fit them.</summary>
[SupportedOSPlatform("linux")]
internal sealed class Cluster
{
    public const string Superuser = "postgres";
    public const string Role = "catalogue";

    /// <summary>Names the socket; there is no TCP port, so it clashes with nothing.</summary>
    public const int Port = 5432;

    // Long enough to replay a large log after a crash.
    private const string StartSeconds = "600";
    private const string StopSeconds = "30";
    private static readonly TimeSpan RetryFor = TimeSpan.FromSeconds(10);
    private static readonly TimeSpan RetryAfter = TimeSpan.FromMilliseconds(200);
    private static readonly TimeSpan AnswerWithin = TimeSpan.FromSeconds(60);

    private readonly ServerAccount _account;
    private readonly TimeProvider _time;

    public Cluster(string folder, PostgresBinaries binaries, ServerAccount account, TimeProvider time)
    {
        Folder = folder;
        Binaries = binaries;
        _account = account;
        _time = time;
    }

    public string Folder { get; }

    public PostgresBinaries Binaries { get; }

    /// <summary>initdb into an empty or absent folder that the account may write.</summary>
    public Task<ToolRun> MakeAsync(string password)
    {
        string[] provider = Binaries.Major >= 17 ? ["--locale-provider=builtin"] : [];
        // The password goes through a pipe that the account itself opens, so it lies in no file the account could read.
        return _account.RunAsync(
            "sh",
            [
                "-c", """cat | exec "$0" "$@" """,
                Binaries.Program("initdb"), "-D", Folder, "--pwfile=/dev/stdin", $"--username={Superuser}",
                "--auth-local=scram-sha-256", "--auth-host=reject", "--data-checksums", "--encoding=UTF8", "--locale=C.UTF-8", .. provider,
            ],
            password + "\n");
    }

    /// <summary>Appends the settings that a person may later change in <c>postgresql.conf</c>.</summary>
    public Task<ToolRun> WriteSettingsAsync() => _account.RunAsync(
        "sh",
        ["-c", """cat >> "$0/postgresql.conf" """, Folder],
        """

        # Written once, when the catalogue made this cluster; yours to change. The catalogue sets the socket and
        # switches TCP off on the command line at each start.
        shared_buffers = 128MB
        max_connections = 200
        logging_collector = on
        log_directory = 'log'
        log_filename = 'postgresql-%a.log'     # one file a weekday, overwritten a week later
        log_rotation_age = 1d
        log_rotation_size = 0
        log_truncate_on_rotation = on
        log_checkpoints = off
        log_timezone = 'UTC'
        timezone = 'UTC'

        """);

    /// <summary>The server that already runs on this cluster, or null.</summary>
    public async Task<PostmasterFile?> FindRunningAsync() =>
        await PostmasterFile.ReadAsync(_account, Folder) is { } note && await note.IsAliveAsync(_account, Folder) ? note : null;

    /// <summary>Waits until a server that is there answers as this cluster's; null when it answers as another's, or not within a minute.</summary>
    public async Task<PostmasterFile?> AnswerAsync(string password, CancellationToken cancellationToken)
    {
        var since = _time.GetTimestamp();
        do
        {
            // Read again each time: the socket folder is written while the server comes up.
            if (await PostmasterFile.ReadAsync(_account, Folder) is { SocketFolder.Length: > 0 } note
                && await DataFolderOfAsync(note, password, cancellationToken) is { } answer)
            {
                return answer == Folder ? note : null;
            }

            await Task.Delay(RetryAfter, _time, cancellationToken);
        }
        while (_time.GetElapsedTime(since) < AnswerWithin);

        return null;
    }

    /// <summary>
    /// Starts the server and waits until it accepts connections. The processes of a server that was killed hold its
    /// memory for a moment, so a start that meets them is tried again for some ten seconds.
    /// </summary>
    public async Task<ToolRun> StartAsync(string socketFolder, IReadOnlyDictionary<string, string> settings)
    {
        var port = Port.ToString(CultureInfo.InvariantCulture);
        var given = string.Join(' ', new Dictionary<string, string>(settings)
        {
            ["listen_addresses"] = "",
            ["unix_socket_directories"] = socketFolder,
            ["unix_socket_permissions"] = "0700",
            ["port"] = port,
        }.Select(setting => $"-c {setting.Key}={setting.Value}"));

        var since = _time.GetTimestamp();
        while (true)
        {
            await RemoveStalePostmasterFileAsync();
            var log = Path.Combine(Folder, "start.log");
            await _account.RunAsync("sh", ["-c", """: > "$0" """, log]);
            var start = await _account.RunAsync(Binaries.Program("pg_ctl"), ["-D", Folder, "-l", log, "-w", "-t", StartSeconds, "-o", given, "start"]);
            if (start.Succeeded)
                return start;

            var reason = await _account.RunAsync("sh", ["-c", """cat "$0/start.log"; newest=$(ls -t "$0"/log/* | head -n 1); tail -n 20 "$newest" """, Folder]);
            var full = start with { Error = string.Join('\n', new[] { start.Error, reason.Output }.Where(text => text.Length > 0)) };
            var leftover = full.Error.Contains("shared memory block", StringComparison.Ordinal) || full.Error.Contains("lock file", StringComparison.Ordinal);
            if (!leftover || _time.GetElapsedTime(since) > RetryFor)
                return full;
            await Task.Delay(RetryAfter, _time);
        }
    }

    /// <summary>Fast stop: cuts connections, writes a checkpoint. Falls back to an immediate stop, which the next start recovers from.</summary>
    public async Task StopAsync()
    {
        foreach (var mode in (string[])["fast", "immediate"])
        {
            var stop = await _account.RunAsync(Binaries.Program("pg_ctl"), ["-D", Folder, "-m", mode, "-w", "-t", StopSeconds, "stop"]);
            if (stop.Succeeded || await FindRunningAsync() is null)
                return;
        }
    }

    /// <summary>Makes sure of the role and the database <c>catalogue</c>.</summary>
    public static async Task MakeDatabaseAsync(string socketFolder, int port, string password, CancellationToken cancellationToken)
    {
        await using var connection = new NpgsqlConnection(
            LocalPostgresServer.ConnectionString(socketFolder, port, Superuser, password, "postgres", pooling: false));
        await connection.OpenAsync(cancellationToken);

        // The password is hexadecimal digits (see Password), so it needs no quoting; a utility statement takes no parameters.
        if (!await ExistsAsync("SELECT 1 FROM pg_roles WHERE rolname = 'catalogue'"))
            await RunAsync($"CREATE ROLE {Role} LOGIN CREATEDB PASSWORD '{password}'");
        if (!await ExistsAsync("SELECT 1 FROM pg_database WHERE datname = 'catalogue'"))
            await RunAsync($"CREATE DATABASE {Role} OWNER {Role}");

        async Task<bool> ExistsAsync(string sql)
        {
            await using var command = new NpgsqlCommand(sql, connection);
            return await command.ExecuteScalarAsync(cancellationToken) is not null;
        }

        async Task RunAsync(string sql)
        {
            await using var command = new NpgsqlCommand(sql, connection);
            await command.ExecuteNonQueryAsync(cancellationToken);
        }
    }

    /// <summary>What the server behind a socket says its data folder is; null when it does not answer yet, empty when it turns us away.</summary>
    private static async Task<string?> DataFolderOfAsync(PostmasterFile note, string password, CancellationToken cancellationToken)
    {
        try
        {
            await using var connection = new NpgsqlConnection(
                LocalPostgresServer.ConnectionString(note.SocketFolder, note.Port, Superuser, password, "postgres", pooling: false));
            await connection.OpenAsync(cancellationToken);
            await using var command = new NpgsqlCommand("SELECT current_setting('data_directory')", connection);
            return (string?)await command.ExecuteScalarAsync(cancellationToken);
        }
        catch (PostgresException refused) when (!refused.IsTransient)
        {
            return "";
        }
        catch (NpgsqlException)
        {
            return null;
        }
    }

    private async Task RemoveStalePostmasterFileAsync()
    {
        if (await PostmasterFile.ReadAsync(_account, Folder) is { } note && !await note.IsAliveAsync(_account, Folder))
            await _account.RunAsync("rm", ["-f", Path.Combine(Folder, PostmasterFile.Name)]);
    }
}
