using System.Runtime.Versioning;
using System.Security.Cryptography;
using System.Text;

namespace Catalogue.Data.LocalPostgres;

/// <summary>
/// Where the server's socket lies. A socket's path may have 107 bytes, and the folder passes through PostgreSQL's and
/// Npgsql's own list syntax, so a data folder with a long or an unusual name gets a short folder elsewhere.
/// </summary>
[SupportedOSPlatform("linux")]
internal static class SocketFolder
{
    // 107 bytes less "/.s.PGSQL.5432", rounded down.
    private const int LongestPath = 90;
    private const string ShortNamePrefix = "catalogue-";

    /// <summary>Picks and makes the folder, mode 0700, the server account's.</summary>
    /// <exception cref="IOException">Someone else already owns the short folder's name.</exception>
    public static async Task<string> MakeAsync(ServerAccount account, string dataFolder)
    {
        var folder = Pick(account, dataFolder);
        Directory.CreateDirectory(folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        if (new DirectoryInfo(folder).LinkTarget is not null)
            throw new IOException($"{folder} is a symbolic link; remove it.");
        await account.GiveAsync(folder);
        var owner = await ServerAccount.OwnerAsync(folder);
        if (owner.UserId != account.UserId)
            throw new IOException($"{folder} belongs to {owner.Name}, not to {account.Name}; remove it.");
        File.SetUnixFileMode(folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        return folder;
    }

    /// <summary>Removes an empty short folder; one inside the data folder stays.</summary>
    public static void Remove(string folder)
    {
        if (!Path.GetFileName(folder).StartsWith(ShortNamePrefix, StringComparison.Ordinal))
            return;
        try
        {
            Directory.Delete(folder);
        }
        catch (IOException)
        {
            // Something still lies in it: the next start takes the folder over as it is.
        }
    }

    private static string Pick(ServerAccount account, string dataFolder)
    {
        var inside = Path.Combine(dataFolder, "socket");
        // With an account of its own the server may not even be let into the data folder.
        if (!account.IsOther && Encoding.UTF8.GetByteCount(inside) <= LongestPath && inside.All(IsPlain))
            return inside;

        var name = ShortNamePrefix + Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(dataFolder)))[..16];
        // Not the session's /run/user folder: it goes away when the person who started the site logs out.
        return Path.Combine(account.IsOther ? "/run" : "/tmp", name);
    }

    private static bool IsPlain(char c) => char.IsAsciiLetterOrDigit(c) || c is '/' or '.' or '-' or '_';
}
