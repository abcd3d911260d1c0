using System.Runtime.Versioning;
using System.Security.Cryptography;

namespace Catalogue.Data.LocalPostgres;

/// <summary>The server's generated password, in a file of mode 0600 in the data folder.</summary>
[SupportedOSPlatform("linux")]
internal static class Password
{
    private const int Bytes = 32;

    public static string File(string dataFolder) => Path.Combine(dataFolder, "postgresql.password");

    /// <summary>The stored password, or null when there is no file or it is empty.</summary>
    /// <exception cref="UnauthorizedAccessException">The file belongs to another account.</exception>
    public static string? Read(string dataFolder)
    {
        var file = File(dataFolder);
        return System.IO.File.Exists(file) && System.IO.File.ReadAllText(file).Trim() is { Length: > 0 } password ? password : null;
    }

    /// <summary>A new password of hexadecimal digits, on disk before it is returned.</summary>
    public static string Make(string dataFolder)
    {
        var password = RandomNumberGenerator.GetHexString(2 * Bytes, lowercase: true);
        using var file = new FileStream(File(dataFolder), new FileStreamOptions
        {
            Mode = FileMode.Create,
            Access = FileAccess.Write,
            UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite,
        });
        using (var writer = new StreamWriter(file, leaveOpen: true))
            writer.WriteLine(password);
        file.Flush(flushToDisk: true);
        return password;
    }
}
