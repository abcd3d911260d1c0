using System.Buffers;
using System.Globalization;
using System.Runtime.Versioning;
using Npgsql;

namespace Catalogue.Data.LocalPostgres;

/// <summary>One start, step by step; each step either goes on or says why not.</summary>
[SupportedOSPlatform("linux")]
internal sealed class Starting
{
    private const UnixFileMode OwnerOnly = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;
    private const UnixFileMode AnyGroupAccess = UnixFileMode.GroupRead | UnixFileMode.GroupWrite | UnixFileMode.GroupExecute;

    // Where root's server keeps its files when its account may not enter the data folder.
    private const string ClustersElsewhere = "/var/lib/catalogue";
    private static readonly TimeSpan JoinWithin = TimeSpan.FromSeconds(30);
    private static readonly TimeSpan JoinRetryAfter = TimeSpan.FromMilliseconds(300);

    // pg_ctl hands these to a shell inside double quotes.
    private static readonly SearchValues<char> NotInPath = SearchValues.Create("\"$`\\\n\r");

    private readonly LocalPostgresOptions _options;
    private readonly string _dataFolder;
    private readonly string _clusterLink;
    private readonly List<string> _notices = [];

    public Starting(LocalPostgresOptions options)
    {
        _options = options;
        _dataFolder = Path.TrimEndingDirectorySeparator(Path.GetFullPath(options.DataFolder));
        _clusterLink = Path.Combine(_dataFolder, "postgresql");
        if (options.Settings.Any(setting => !setting.Key.Concat(setting.Value).All(c => char.IsAsciiLetterOrDigit(c) || c is '.' or '-' or '_')))
            throw new ArgumentException("A setting holds a character outside letters, digits, dot, dash and underscore.", nameof(options));
    }

    public async Task<LocalPostgresStart> RunAsync(CancellationToken cancellationToken)
    {
        if (_dataFolder.AsSpan().ContainsAny(NotInPath))
        {
            return new LocalPostgresStart.Refused(
                $"The data folder's name {_dataFolder} holds a quote, dollar sign, backquote, backslash or line break.",
                "PostgreSQL's own tools cannot take such a name: choose another folder with --data.");
        }

        try
        {
            // An existing folder keeps its mode: it may be shared with a back-up account on purpose.
            Directory.CreateDirectory(_dataFolder, OwnerOnly);
            var since = _options.TimeProvider.GetTimestamp();
            while (true)
            {
                if (DataFolderLock.TryTake(_dataFolder) is { } taken)
                    return await HoldingAsync(taken, cancellationToken);
                if (!_options.JoinRunning)
                    return HeldByAnother();
                if (await JoinAsync(cancellationToken) is { } joined)
                    return joined;
                if (_options.TimeProvider.GetElapsedTime(since) > JoinWithin)
                    return HeldByAnother();
                // The other program may be starting its server, or ending.
                await Task.Delay(JoinRetryAfter, _options.TimeProvider, cancellationToken);
            }
        }
        catch (Exception refused) when (refused is UnauthorizedAccessException or IOException)
        {
            return new LocalPostgresStart.Refused(
                $"The data folder {_dataFolder} cannot be used: {refused.Message}",
                "Run the catalogue as the account that owns the folder, give the folder to that account, or choose another folder with --data.");
        }
    }

    public async Task<bool> StopLeftBehindAsync()
    {
        if (!Directory.Exists(_dataFolder))
            return true;
        using var taken = DataFolderLock.TryTake(_dataFolder);
        if (taken is null)
            return false;
        if (!Directory.Exists(_clusterLink))
            return true;
        var (cluster, _) = await FindClusterAsync();
        if (cluster is null)
            return false;
        if (await cluster.FindRunningAsync() is { } left)
        {
            await cluster.StopAsync();
            SocketFolder.Remove(left.SocketFolder);
        }

        return await cluster.FindRunningAsync() is null;
    }

    private async Task<LocalPostgresStart> HoldingAsync(DataFolderLock taken, CancellationToken cancellationToken)
    {
        LocalPostgresStart? outcome = null;
        try
        {
            return outcome = Directory.Exists(_clusterLink)
                ? await OpenAsync(taken, cancellationToken)
                : await MakeAsync(taken, cancellationToken);
        }
        finally
        {
            if (outcome is not LocalPostgresStart.Running)
                taken.Dispose();
        }
    }

    private async Task<LocalPostgresStart> MakeAsync(DataFolderLock taken, CancellationToken cancellationToken)
    {
        if (new FileInfo(_clusterLink).LinkTarget is { } gone)
        {
            return new LocalPostgresStart.Refused(
                $"{_clusterLink} points to {gone}, where the database should be, and nothing is there.",
                $"Bring that folder back, or restore a back-up; to begin with an empty catalogue remove the link {_clusterLink}.");
        }

        var found = await PostgresBinaries.FindAllAsync(_options.BinFolder);
        if (found is not [{ Major: >= PostgresBinaries.LeastMajor } binaries, ..])
            return NoBinaries(found, PostgresBinaries.LeastMajor, exactly: false);
        if (await ServerAccount.ForNewClusterAsync() is not { } account)
        {
            return new LocalPostgresStart.Refused(
                "PostgreSQL does not run as root, and this machine has no account postgres, nobody or daemon to run it as.",
                "Make one (useradd --system postgres), or run the catalogue as an ordinary account.");
        }

        var closed = await OpenWayAsync(account);
        var folder = closed is null ? _clusterLink : MakeFolderElsewhere();
        // Made under another name: a start that is cut short leaves no half-made cluster behind under the real one.
        var making = folder + ".making";
        var cluster = new Cluster(making, binaries, account, _options.TimeProvider);
        if (Directory.Exists(making))
            Directory.Delete(making, recursive: true);
        Directory.CreateDirectory(making, OwnerOnly);
        await account.GiveAsync(making);

        var password = Password.Read(_dataFolder) ?? Password.Make(_dataFolder);
        var made = await cluster.MakeAsync(password);
        if (made.Succeeded)
            made = await cluster.WriteSettingsAsync();
        if (!made.Succeeded)
        {
            return new LocalPostgresStart.Refused(
                $"PostgreSQL {Text(binaries.Major)} could not make its files in {making}: {made.Error}",
                "Mend what the message names (space, rights, a broken installation) and start again; nothing is kept of the attempt.");
        }

        Directory.Move(making, folder);
        if (closed is not null)
            Directory.CreateSymbolicLink(_clusterLink, folder);
        return await OpenAsync(taken, cancellationToken);
    }

    private async Task<LocalPostgresStart> OpenAsync(DataFolderLock taken, CancellationToken cancellationToken)
    {
        var (cluster, refused) = await FindClusterAsync();
        if (cluster is null)
            return refused!;
        if (Password.Read(_dataFolder) is not { } password)
            return NoPassword();

        if (await cluster.FindRunningAsync() is { } left)
        {
            if (await cluster.AnswerAsync(password, cancellationToken) is not { } note)
            {
                return new LocalPostgresStart.Refused(
                    $"A PostgreSQL server (process {Text(left.ProcessId)}) runs on {cluster.Folder} but does not answer as the catalogue's own.",
                    $"Stop it (kill -INT {Text(left.ProcessId)}), wait until it is gone, and start again.");
            }

            _notices.Add($"The database server that an earlier run left behind (process {Text(left.ProcessId)}) is used again.");
            return await RunningAsync(cluster, note.SocketFolder, note.Port, password, taken, cancellationToken);
        }

        var socketFolder = await SocketFolder.MakeAsync(await AccountOfAsync(cluster.Folder), _dataFolder);
        var starting = cluster.StartAsync(socketFolder, _options.Settings);
        try
        {
            var start = await starting.WaitAsync(cancellationToken);
            if (!start.Succeeded)
            {
                SocketFolder.Remove(socketFolder);
                return new LocalPostgresStart.Refused(
                    $"PostgreSQL {Text(cluster.Binaries.Major)} did not start on {cluster.Folder}: {start.Error}",
                    $"Its log is in {Path.Combine(cluster.Folder, "log")}. Mend what it names (space, rights, memory) and start again.");
            }
        }
        catch (OperationCanceledException)
        {
            await starting;
            await cluster.StopAsync();
            throw;
        }

        return await RunningAsync(cluster, socketFolder, Cluster.Port, password, taken, cancellationToken);
    }

    private async Task<LocalPostgresStart> RunningAsync(
        Cluster cluster, string socketFolder, int port, string password, DataFolderLock? taken, CancellationToken cancellationToken)
    {
        try
        {
            await Cluster.MakeDatabaseAsync(socketFolder, port, password, cancellationToken);
        }
        catch (Exception failed) when (failed is NpgsqlException or OperationCanceledException)
        {
            if (taken is not null)
                await cluster.StopAsync();
            if (failed is OperationCanceledException)
                throw;
            return new LocalPostgresStart.Refused(
                $"The database server on {cluster.Folder} refused to make the database: {failed.Message}",
                $"Its log is in {Path.Combine(cluster.Folder, "log")}; the password it expects is the one in {Password.File(_dataFolder)}.");
        }

        if (new DirectoryInfo(_clusterLink).LinkTarget is not null)
        {
            _notices.Add(
                $"The database lies in {cluster.Folder} and not in the data folder, because the account it runs as may not enter every folder above {_dataFolder}. "
                + "To keep everything together choose a data folder that every account may reach, such as one under /srv.");
        }

        return new LocalPostgresStart.Running(
            LocalPostgresServer.ConnectionString(socketFolder, port, Cluster.Role, password, Cluster.Role, pooling: true),
            new LocalPostgresServer(cluster, socketFolder, taken),
            _notices);
    }

    /// <summary>The server that the holder of the data folder runs; null when it does not answer (yet).</summary>
    private async Task<LocalPostgresStart?> JoinAsync(CancellationToken cancellationToken)
    {
        if (!Directory.Exists(_clusterLink))
            return null;
        var (cluster, refused) = await FindClusterAsync();
        if (cluster is null)
            return refused;
        if (Password.Read(_dataFolder) is not { } password)
            return NoPassword();
        return await cluster.FindRunningAsync() is not null && await cluster.AnswerAsync(password, cancellationToken) is { } note
            ? await RunningAsync(cluster, note.SocketFolder, note.Port, password, taken: null, cancellationToken)
            : null;
    }

    private async Task<(Cluster? Cluster, LocalPostgresStart.Refused? Refused)> FindClusterAsync()
    {
        var folder = new DirectoryInfo(_clusterLink).ResolveLinkTarget(returnFinalTarget: true)?.FullName ?? _clusterLink;
        if (await ServerAccount.ForClusterAsync(folder) is not { } account)
        {
            var owner = await ServerAccount.OwnerAsync(folder);
            return (null, new LocalPostgresStart.Refused(
                $"The database in {folder} belongs to the account {owner.Name}, which this program cannot run it as.",
                owner.UserId == 0
                    ? $"PostgreSQL does not run as root: give the folder to an ordinary account (chown -R postgres {folder})."
                    : $"Run the catalogue as {owner.Name}, or as root."));
        }

        // The server knows its folder by its real path, links in the folders above resolved too.
        var real = await account.RunAsync("realpath", ["--", folder]);
        if (!real.Succeeded)
        {
            var closed = await account.FirstClosedFolderAsync(folder) ?? folder;
            return (null, new LocalPostgresStart.Refused(
                $"The account {account.Name}, which the database in {folder} belongs to, may not enter {closed}.",
                $"Let it in (chmod o+x {closed}), or move the data folder to where every account may go, such as /srv."));
        }

        var version = await account.RunAsync("cat", [Path.Combine(real.Output, "PG_VERSION")]);
        if (!version.Succeeded || !int.TryParse(version.Output, NumberStyles.None, CultureInfo.InvariantCulture, out var major))
        {
            return (null, new LocalPostgresStart.Refused(
                $"{folder} is not a PostgreSQL data folder: its file PG_VERSION is missing or unreadable.",
                "Restore the folder from a back-up, or move it away to begin with an empty catalogue."));
        }

        var found = await PostgresBinaries.FindAllAsync(_options.BinFolder);
        return found.FirstOrDefault(binaries => binaries.Major == major) is { } fitting
            ? (new Cluster(real.Output, fitting, account, _options.TimeProvider), null)
            : (null, NoBinaries(found, major, exactly: true));
    }

    /// <summary>
    /// Lets the server's account into the data folder where that is ours to grant. Returns the folder that stays closed,
    /// or null when the way is free.
    /// </summary>
    private async Task<string?> OpenWayAsync(ServerAccount account)
    {
        if (!account.IsOther || await account.FirstClosedFolderAsync(_dataFolder) is not { } closed)
            return null;
        var mode = File.GetUnixFileMode(_dataFolder);
        if (closed != _dataFolder || (mode & AnyGroupAccess) != 0)
            return closed;

        // Only the way in, only for that account's group: drafts and photos stay out of sight of everyone else.
        var change = await ToolRun.RunAsync("chgrp", [Text(account.GroupId), _dataFolder]);
        if (change.Succeeded)
            File.SetUnixFileMode(_dataFolder, mode | UnixFileMode.GroupExecute);
        return await account.FirstClosedFolderAsync(_dataFolder);
    }

    private static string MakeFolderElsewhere()
    {
        Directory.CreateDirectory(ClustersElsewhere, OwnerOnly | UnixFileMode.GroupExecute | UnixFileMode.OtherExecute);
        return Path.Combine(ClustersElsewhere, Guid.CreateVersion7().ToString("N"));
    }

    private static async Task<ServerAccount> AccountOfAsync(string clusterFolder) =>
        await ServerAccount.ForClusterAsync(clusterFolder) ?? throw new IOException($"{clusterFolder} changed its owner.");

    private LocalPostgresStart.Refused HeldByAnother()
    {
        var holder = DataFolderLock.Holder(_dataFolder) is { } id ? $" (process {Text(id)})" : "";
        return new LocalPostgresStart.Refused(
            $"The data folder {_dataFolder} is in use by another catalogue{holder}.",
            "Stop that one first, or start this one with another folder (--data).");
    }

    private LocalPostgresStart.Refused NoPassword() => new(
        $"The password of the database is missing: {Password.File(_dataFolder)}.",
        "Put the file back from a back-up of the data folder; the operating guide says how to set a new password when there is none.");

    private LocalPostgresStart.Refused NoBinaries(IReadOnlyList<PostgresBinaries> found, int major, bool exactly)
    {
        var seen = found.Count == 0 ? "none was found" : "found: " + string.Join(", ", found.Select(binaries => $"{Text(binaries.Major)} in {binaries.Folder}"));
        if (PostgresBinaries.Given(_options.BinFolder) is { } given)
            seen += $"; only {given} was looked at, as asked";
        return exactly
            ? new LocalPostgresStart.Refused(
                $"The database in {_clusterLink} was made by PostgreSQL {Text(major)} and runs with no other version ({seen}).",
                $"Install the programs of PostgreSQL {Text(major)} (Debian, Ubuntu: postgresql-{Text(major)}). To move to a newer version, dump the database "
                + "with the old one (pg_dump), move the folder away, start the catalogue with the new one and restore the dump: the operating guide has the steps.")
            : new LocalPostgresStart.Refused(
                $"The catalogue runs a PostgreSQL of its own and needs its programs, version {Text(major)} or later ({seen}).",
                $"Install them (Debian, Ubuntu: apt-get install postgresql), name their folder in {PostgresBinaries.FolderVariable}, "
                + "or give the connection string of a PostgreSQL server (ConnectionStrings__Catalogue).");
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
