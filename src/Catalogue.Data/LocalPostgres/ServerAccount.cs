using System.Globalization;

namespace Catalogue.Data.LocalPostgres;

/// <summary>
/// The operating-system account the server runs as. PostgreSQL refuses to run as root, so a program run by root
/// hands its server to an unprivileged account; every other program runs it as itself.
/// </summary>
internal sealed class ServerAccount
{
    // The distribution's own account for PostgreSQL, then accounts that every Linux has and that own nothing.
    private static readonly string[] Candidates = ["postgres", "nobody", "daemon"];

    private readonly bool _isOther;

    private ServerAccount(int userId, int groupId, string name, bool isOther)
    {
        UserId = userId;
        GroupId = groupId;
        Name = name;
        _isOther = isOther;
    }

    public int UserId { get; }

    public int GroupId { get; }

    public string Name { get; }

    /// <summary>True when the program is root and the server is another account's process.</summary>
    public bool IsOther => _isOther;

    /// <summary>The account for a new cluster; null when root finds no unprivileged account at all.</summary>
    public static async Task<ServerAccount?> ForNewClusterAsync()
    {
        if (!Environment.IsPrivilegedProcess)
            return await OwnAsync();

        foreach (var name in Candidates)
        {
            var entry = await ToolRun.RunAsync("getent", ["passwd", name]);
            if (entry.Succeeded && entry.Output.Split(':') is { Length: >= 4 } fields)
                return new ServerAccount(Number(fields[2]), Number(fields[3]), name, isOther: true);
        }

        return null;
    }

    /// <summary>
    /// The account an existing cluster belongs to; null when this program cannot act for it: the cluster belongs to
    /// root, or to someone else while this program is not root.
    /// </summary>
    public static async Task<ServerAccount?> ForClusterAsync(string clusterFolder)
    {
        var owner = await OwnerAsync(clusterFolder);
        if (!Environment.IsPrivilegedProcess)
        {
            var own = await OwnAsync();
            return own.UserId == owner.UserId ? own : null;
        }

        return owner.UserId == 0 ? null : new ServerAccount(owner.UserId, owner.GroupId, owner.Name, isOther: true);
    }

    public static async Task<(int UserId, int GroupId, string Name)> OwnerAsync(string path)
    {
        var stat = await ToolRun.RunAsync("stat", ["-L", "-c", "%u:%g:%U", path]);
        if (!stat.Succeeded)
            throw new IOException($"The owner of {path} could not be read: {stat.Error}");
        var fields = stat.Output.Split(':', 3);
        return (Number(fields[0]), Number(fields[1]), fields[2]);
    }

    /// <summary>Runs a tool as this account.</summary>
    public Task<ToolRun> RunAsync(string file, IEnumerable<string> arguments, string? input = null) => _isOther
        ? ToolRun.RunAsync(
            "setpriv",
            [$"--reuid={Text(UserId)}", $"--regid={Text(GroupId)}", "--clear-groups", "--", file, .. arguments],
            input)
        : ToolRun.RunAsync(file, arguments, input);

    /// <summary>The outermost folder on the way to <paramref name="folder"/>, itself included, that this account may not enter; null when the way is free.</summary>
    public async Task<string?> FirstClosedFolderAsync(string folder)
    {
        if ((await RunAsync("test", ["-x", folder])).Succeeded)
            return null;

        var way = new Stack<string>();
        for (var at = new DirectoryInfo(folder); at is not null; at = at.Parent)
            way.Push(at.FullName);
        foreach (var step in way)
        {
            if (!(await RunAsync("test", ["-x", step])).Succeeded)
                return step;
        }

        return folder;
    }

    /// <summary>Makes a folder (or takes over the one there) that only this account may use.</summary>
    public async Task GiveAsync(string folder)
    {
        if (_isOther)
        {
            var change = await ToolRun.RunAsync("chown", [$"{Text(UserId)}:{Text(GroupId)}", folder]);
            if (!change.Succeeded)
                throw new IOException($"{folder} could not be given to the account {Name}: {change.Error}");
        }
    }

    private static async Task<ServerAccount> OwnAsync()
    {
        // A stat of its own process entry shows the ids the program runs with.
        var own = await OwnerAsync("/proc/self");
        return new ServerAccount(own.UserId, own.GroupId, own.Name, isOther: false);
    }

    private static int Number(string text) => int.Parse(text, CultureInfo.InvariantCulture);

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
