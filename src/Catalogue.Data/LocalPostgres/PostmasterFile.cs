using System.Globalization;

namespace Catalogue.Data.LocalPostgres;

/// <summary>The server's own note of itself, <c>postmaster.pid</c> in the cluster; it outlives a server that was killed.</summary>
/// <param name="ProcessId">Line 1.</param>
/// <param name="Port">Line 4; part of the socket's name.</param>
/// <param name="SocketFolder">Line 5, the first of the server's socket folders; empty while the server is coming up.</param>
internal sealed record PostmasterFile(int ProcessId, int Port, string SocketFolder)
{
    public const string Name = "postmaster.pid";

    /// <summary>Reads it as the cluster's account; null when there is none or it is cut short.</summary>
    public static async Task<PostmasterFile?> ReadAsync(ServerAccount account, string clusterFolder)
    {
        var text = await account.RunAsync("cat", [Path.Combine(clusterFolder, Name)]);
        if (!text.Succeeded)
            return null;
        var lines = text.Output.Split('\n');
        // A negative number marks the single-user server, which nobody can connect to.
        return int.TryParse(lines[0], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var id)
            ? new PostmasterFile(
                Math.Abs(id),
                lines.Length > 3 && int.TryParse(lines[3], NumberStyles.None, CultureInfo.InvariantCulture, out var port) ? port : 0,
                lines.Length > 4 ? lines[4].Trim() : "")
            : null;
    }

    /// <summary>
    /// True when the process lives and works in this cluster. A zombie, or a stranger that was given the same number
    /// after a restart of the machine, is not the server.
    /// </summary>
    public async Task<bool> IsAliveAsync(ServerAccount account, string clusterFolder)
    {
        var process = string.Create(CultureInfo.InvariantCulture, $"/proc/{ProcessId}");
        if (IsZombie(process))
            return false;
        // As the server's account: in a container even root may not look into another account's process.
        var folder = await account.RunAsync("readlink", [process + "/cwd"]);
        return folder.Succeeded && folder.Output == clusterFolder;
    }

    private static bool IsZombie(string process)
    {
        try
        {
            // "pid (name) state ...": the name may hold any character, so read from its last bracket.
            var stat = File.ReadAllText(process + "/stat");
            return stat[(stat.LastIndexOf(')') + 1)..].TrimStart().StartsWith('Z');
        }
        catch (IOException)
        {
            return false;
        }
    }
}
