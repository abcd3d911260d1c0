using System.Diagnostics;
using System.Globalization;
using System.Runtime.Versioning;
using Catalogue.Data.LocalPostgres;
using Npgsql;

namespace Catalogue.Data.Tests.LocalPostgres;

[SupportedOSPlatform("linux")]
public sealed class LocalPostgresServerTests : IDisposable
{
    private readonly string _root = Directory.CreateTempSubdirectory("catalogue-own-").FullName;

    public LocalPostgresServerTests()
    {
        // Any account may enter, as it may enter /srv; the closed case has a test of its own.
        File.SetUnixFileMode(_root, File.GetUnixFileMode(_root) | UnixFileMode.GroupExecute | UnixFileMode.OtherExecute);
    }

    private string DataFolder => Path.Combine(_root, "data");

    private string ClusterFolder => Path.Combine(DataFolder, "postgresql");

    public void Dispose()
    {
        var cluster = new DirectoryInfo(ClusterFolder);
        if (cluster.LinkTarget is not null)
            Directory.Delete(cluster.ResolveLinkTarget(returnFinalTarget: true)!.FullName, recursive: true);
        Directory.Delete(_root, recursive: true);
    }

    [Fact]
    public async Task StartAsync_EmptyFolder_MakesTheDatabaseBehindASocketOnly()
    {
        var running = await StartAsync();
        await using (running.Server)
        {
            Assert.Equal("catalogue", await AskAsync(running, "SELECT current_database()::text"));
            Assert.Equal("catalogue", await AskAsync(running, "SELECT current_user::text"));
            Assert.Equal("off", await AskAsync(running, "SELECT current_setting('is_superuser')"));
            Assert.Equal("", await AskAsync(running, "SELECT current_setting('listen_addresses')"));
            Assert.Equal("0700", await AskAsync(running, "SELECT current_setting('unix_socket_permissions')"));
            Assert.Equal("on", await AskAsync(running, "SELECT current_setting('data_checksums')"));
            Assert.Equal("UTF8", await AskAsync(running, "SELECT current_setting('server_encoding')"));
            Assert.Equal("200", await AskAsync(running, "SELECT current_setting('max_connections')"));
            Assert.True(running.Server.SocketFolder.Length < 100);
            Assert.False(running.Server.IsJoined);
            Assert.Equal(
                UnixFileMode.UserRead | UnixFileMode.UserWrite,
                File.GetUnixFileMode(Path.Combine(DataFolder, "postgresql.password")));
            Assert.Equal(
                UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute,
                File.GetUnixFileMode(ClusterFolder));
        }
    }

    [Fact]
    public async Task StartAsync_OwnerOfTheDatabase_MayAddTheExtensionsTheCatalogueUses()
    {
        var running = await StartAsync();
        await using (running.Server)
        {
            await AskAsync(running, "CREATE EXTENSION pg_trgm; CREATE EXTENSION citext; CREATE EXTENSION unaccent");
            Assert.Equal("3", await AskAsync(running, "SELECT count(*)::text FROM pg_extension WHERE extname IN ('pg_trgm', 'citext', 'unaccent')"));
        }
    }

    [Fact]
    public async Task StartAsync_WrongPassword_IsRefusedByTheServer()
    {
        var running = await StartAsync();
        await using (running.Server)
        {
            var wrong = new NpgsqlConnectionStringBuilder(running.ConnectionString) { Password = "guess", Pooling = false };
            await using var connection = new NpgsqlConnection(wrong.ConnectionString);
            var refused = await Assert.ThrowsAsync<PostgresException>(() => connection.OpenAsync());
            Assert.Equal(PostgresErrorCodes.InvalidPassword, refused.SqlState);
        }
    }

    [Fact]
    public async Task StartAsync_AfterAStop_FindsWhatWasStored()
    {
        var first = await StartAsync();
        await using (first.Server)
            await StoreAsync(first);

        Assert.False(File.Exists(Path.Combine(ClusterFolder, "postmaster.pid")));
        var second = await StartAsync();
        await using (second.Server)
            Assert.Equal("7", await StoredAsync(second));
    }

    [Fact]
    public async Task StartAsync_ServerKilled_StartsOverItsStalePidFile()
    {
        var first = await StartAsync();
        await StoreAsync(first);
        await RunAsync("kill", "-KILL", await PostmasterAsync());
        await first.Server.DisposeAsync();
        Assert.True(File.Exists(Path.Combine(ClusterFolder, "postmaster.pid")));

        var second = await StartAsync();
        await using (second.Server)
            Assert.Equal("7", await StoredAsync(second));
    }

    [Fact]
    public async Task StartAsync_PidFileNamesALivingStranger_Starts()
    {
        var first = await StartAsync();
        var note = await File.ReadAllLinesAsync(Path.Combine(ClusterFolder, "postmaster.pid"));
        await first.Server.DisposeAsync();
        // After a restart of the machine the number may belong to anything, also to a process of the server's own account.
        using var stranger = Process.Start("sleep", "60");
        note[0] = stranger.Id.ToString(CultureInfo.InvariantCulture);
        await File.WriteAllLinesAsync(Path.Combine(ClusterFolder, "postmaster.pid"), note);
        await RunAsync("chown", "--reference=" + ClusterFolder, Path.Combine(ClusterFolder, "postmaster.pid"));

        var second = await StartAsync();
        await second.Server.DisposeAsync();
        Assert.False(stranger.HasExited);
        stranger.Kill();
    }

    [Fact]
    public async Task StartAsync_ProgramKilled_AdoptsItsServerAndStopsItInTheEnd()
    {
        string postmaster;
        using (var held = await HeldServer.StartAsync(DataFolder))
        {
            postmaster = await PostmasterAsync();
            held.Kill();
        }

        Assert.False(await IsGoneAsync(postmaster, within: 0));
        var running = await StartAsync();
        Assert.Equal(postmaster, await PostmasterAsync());
        Assert.Contains(running.Notices, notice => notice.Contains(postmaster, StringComparison.Ordinal));
        Assert.Equal("catalogue", await AskAsync(running, "SELECT current_database()::text"));

        await running.Server.DisposeAsync();
        Assert.True(await IsGoneAsync(postmaster));
    }

    [Fact]
    public async Task StartAsync_ServerLeftBehindWithAnotherPassword_IsRefusedNamingItsProcess()
    {
        using (var held = await HeldServer.StartAsync(DataFolder))
            held.Kill();
        await File.WriteAllTextAsync(Path.Combine(DataFolder, "postgresql.password"), "0123\n");

        var refused = Assert.IsType<LocalPostgresStart.Refused>(await LocalPostgresServer.StartAsync(Options()));
        Assert.Contains(await PostmasterAsync(), refused.Reason, StringComparison.Ordinal);
        Assert.True(await LocalPostgresServer.StopLeftBehindAsync(Options()));
    }

    [Fact]
    public async Task StartAsync_FolderHeldByAnotherProgram_IsRefusedNamingFolderAndProcess()
    {
        using var held = await HeldServer.StartAsync(DataFolder);

        var refused = Assert.IsType<LocalPostgresStart.Refused>(await LocalPostgresServer.StartAsync(Options()));
        Assert.Contains(DataFolder, refused.Reason, StringComparison.Ordinal);
        Assert.Contains(held.ProcessId.ToString(CultureInfo.InvariantCulture), refused.Reason, StringComparison.Ordinal);

        held.Kill();
        await (await StartAsync()).Server.DisposeAsync();
    }

    [Fact]
    public async Task StartAsync_JoinRunning_UsesTheServerOfTheOtherProgramAndLeavesItRunning()
    {
        var site = await StartAsync();
        await using (site.Server)
        {
            var verb = Assert.IsType<LocalPostgresStart.Running>(await LocalPostgresServer.StartAsync(Options() with { JoinRunning = true }));
            await StoreAsync(verb);
            Assert.True(verb.Server.IsJoined);
            await verb.Server.DisposeAsync();
            Assert.Equal("7", await StoredAsync(site));
        }
    }

    [Fact]
    public async Task StartAsync_JoinRunningWithNothingRunning_StartsAndStopsItsOwn()
    {
        var verb = Assert.IsType<LocalPostgresStart.Running>(await LocalPostgresServer.StartAsync(Options() with { JoinRunning = true }));
        Assert.False(verb.Server.IsJoined);
        var postmaster = await PostmasterAsync();
        await verb.Server.DisposeAsync();
        Assert.True(await IsGoneAsync(postmaster));
    }

    [Fact]
    public async Task StopLeftBehindAsync_ProgramAliveThenKilled_StopsOnlyTheServerNobodyHolds()
    {
        using var held = await HeldServer.StartAsync(DataFolder);
        var postmaster = await PostmasterAsync();
        Assert.False(await LocalPostgresServer.StopLeftBehindAsync(Options()));
        Assert.False(await IsGoneAsync(postmaster, within: 0));

        held.Kill();
        Assert.True(await LocalPostgresServer.StopLeftBehindAsync(Options()));
        Assert.True(await IsGoneAsync(postmaster));
    }

    [Fact]
    public async Task StartAsync_FolderOfAnotherMajor_IsRefusedNamingTheVersionItNeeds()
    {
        await (await StartAsync()).Server.DisposeAsync();
        await File.WriteAllTextAsync(Path.Combine(ClusterFolder, "PG_VERSION"), "12\n");

        var refused = Assert.IsType<LocalPostgresStart.Refused>(await LocalPostgresServer.StartAsync(Options()));
        Assert.Contains("PostgreSQL 12", refused.Reason, StringComparison.Ordinal);
        Assert.Contains("postgresql-12", refused.WhatToDo, StringComparison.Ordinal);
        Assert.Contains("pg_dump", refused.WhatToDo, StringComparison.Ordinal);
    }

    [Fact]
    public async Task StartAsync_NoBinaries_IsRefusedNamingThePackage()
    {
        var refused = Assert.IsType<LocalPostgresStart.Refused>(await LocalPostgresServer.StartAsync(Options() with { BinFolder = Path.Combine(_root, "none") }));
        Assert.Contains("apt-get install postgresql", refused.WhatToDo, StringComparison.Ordinal);
        Assert.False(Directory.Exists(ClusterFolder));
    }

    [Fact]
    public async Task StartAsync_PasswordFileGone_IsRefusedNamingTheFile()
    {
        await (await StartAsync()).Server.DisposeAsync();
        File.Delete(Path.Combine(DataFolder, "postgresql.password"));

        var refused = Assert.IsType<LocalPostgresStart.Refused>(await LocalPostgresServer.StartAsync(Options()));
        Assert.Contains("postgresql.password", refused.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public async Task StartAsync_InterruptedWhileMakingTheCluster_BeginsAgain()
    {
        Directory.CreateDirectory(ClusterFolder + ".making/base");
        await File.WriteAllTextAsync(ClusterFolder + ".making/PG_VERSION", "15\n");

        await (await StartAsync()).Server.DisposeAsync();
        Assert.False(Directory.Exists(ClusterFolder + ".making"));
    }

    [Fact]
    public async Task StartAsync_BrokenSetting_IsRefusedWithTheServersOwnWordsAndCanBeMended()
    {
        await (await StartAsync()).Server.DisposeAsync();
        var settings = Path.Combine(ClusterFolder, "postgresql.conf");
        await File.AppendAllTextAsync(settings, "work_mem = much\n");

        var refused = Assert.IsType<LocalPostgresStart.Refused>(await LocalPostgresServer.StartAsync(Options()));
        Assert.Contains("work_mem", refused.Reason, StringComparison.Ordinal);

        await File.AppendAllTextAsync(settings, "work_mem = 8MB\n");
        await File.WriteAllTextAsync(settings, (await File.ReadAllTextAsync(settings)).Replace("work_mem = much\n", "", StringComparison.Ordinal));
        await (await StartAsync()).Server.DisposeAsync();
    }

    [Theory]
    [InlineData("a folder with spaces, and a comma")]
    [InlineData("a-folder-whose-name-alone-is-longer-than-the-hundred-and-seven-bytes-that-the-whole-path-of-a-unix-socket-may-have")]
    [InlineData("prüfstand-µ")]
    public async Task StartAsync_AwkwardFolderName_StillHasAShortSocketPath(string name)
    {
        var folder = Path.Combine(DataFolder, name);
        Directory.CreateDirectory(folder);
        var running = Assert.IsType<LocalPostgresStart.Running>(await LocalPostgresServer.StartAsync(Options() with { DataFolder = folder }));
        Assert.True(running.Server.SocketFolder.Length < 93);
        Assert.Equal("catalogue", await AskAsync(running, "SELECT current_database()::text"));
        await running.Server.DisposeAsync();
        Assert.False(running.Server.SocketFolder.StartsWith("/tmp/catalogue-", StringComparison.Ordinal) && Directory.Exists(running.Server.SocketFolder));
    }

    [Fact]
    public async Task StartAsync_FolderNameAShellWouldRead_IsRefused()
    {
        var refused = Assert.IsType<LocalPostgresStart.Refused>(
            await LocalPostgresServer.StartAsync(Options() with { DataFolder = Path.Combine(_root, "$(id)") }));
        Assert.Contains("$(id)", refused.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public async Task StartAsync_ParentClosedToOtherAccounts_RunsAndSaysWhereTheDatabaseLies()
    {
        Directory.CreateDirectory(DataFolder);
        File.SetUnixFileMode(_root, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);

        var running = await StartAsync();
        await using (running.Server)
            await StoreAsync(running);
        // Only root's server has an account of its own, which the closed folder keeps out.
        if (Environment.IsPrivilegedProcess)
            Assert.Contains(running.Server.ClusterFolder, Assert.Single(running.Notices), StringComparison.Ordinal);
        else
            Assert.Equal(ClusterFolder, running.Server.ClusterFolder);

        var second = await StartAsync();
        await using (second.Server)
            Assert.Equal("7", await StoredAsync(second));
    }

    [Fact]
    public async Task StartAsync_CancelledWhileStarting_LeavesNoServerBehind()
    {
        await (await StartAsync()).Server.DisposeAsync();
        using var cancelled = new CancellationTokenSource();
        await cancelled.CancelAsync();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => LocalPostgresServer.StartAsync(Options(), cancelled.Token));
        Assert.False(File.Exists(Path.Combine(ClusterFolder, "postmaster.pid")));
        await (await StartAsync()).Server.DisposeAsync();
    }

    private static async Task StoreAsync(LocalPostgresStart.Running running) =>
        await AskAsync(running, "CREATE TABLE kept (number integer); INSERT INTO kept VALUES (7)");

    private static Task<string?> StoredAsync(LocalPostgresStart.Running running) => AskAsync(running, "SELECT number::text FROM kept");

    private static async Task<string?> AskAsync(LocalPostgresStart.Running running, string sql)
    {
        await using var source = NpgsqlDataSource.Create(running.ConnectionString);
        await using var command = source.CreateCommand(sql);
        return (string?)await command.ExecuteScalarAsync();
    }

    // The server removes its note as its last deed but one, so its process may be seen a moment longer.
    private static async Task<bool> IsGoneAsync(string processId, int within = 50)
    {
        for (var attempt = 0; attempt <= within; attempt++)
        {
            // The command line of a zombie is empty.
            var commandLine = "/proc/" + processId + "/cmdline";
            if (!File.Exists(commandLine) || (await File.ReadAllTextAsync(commandLine)).Length == 0)
                return true;
            await Task.Delay(TimeSpan.FromMilliseconds(100));
        }

        return false;
    }

    private static async Task RunAsync(string tool, params string[] arguments)
    {
        using var process = Process.Start(tool, arguments);
        await process.WaitForExitAsync();
        Assert.Equal(0, process.ExitCode);
    }

    private LocalPostgresOptions Options() => new() { DataFolder = DataFolder };

    private async Task<LocalPostgresStart.Running> StartAsync() =>
        Assert.IsType<LocalPostgresStart.Running>(await LocalPostgresServer.StartAsync(Options()));

    private async Task<string> PostmasterAsync() => (await File.ReadAllLinesAsync(Path.Combine(ClusterFolder, "postmaster.pid")))[0];
}
