using System.Globalization;
using Catalogue.Data.Teardowns;
using Catalogue.Media.Photos;

namespace Catalogue.Web.Verbs;

/// <summary>What the verbs that bring in folders and zip files have in common.</summary>
internal static class BundleVerbs
{
    /// <summary>Who makes the changes of the admin command, as the audit names it.</summary>
    public static Editor Who { get; } = new("admin command", IsPerson: false);

    /// <summary>Opens a folder or a zip file for as long as it is needed; 1 where it cannot be read.</summary>
    public static async Task<int> WithBundleAsync(string path, Func<FileBundle, Task<int>> use)
    {
        var isFolder = Directory.Exists(path);
        if (!isFolder && !File.Exists(path))
            return await RefuseAsync($"There is no file and no folder {path}.");
        await using var file = isFolder ? null : File.OpenRead(path);
        switch (file is null ? FolderBundle.Open(path) : ZipBundle.Open(file))
        {
            case FileBundle.Opening.Opened opened:
                using (opened.Bundle)
                    return await use(opened.Bundle);
            case FileBundle.Opening.Refused refused:
                return await RefuseAsync(refused.Reason);
            default:
                throw new InvalidOperationException("A bundle is opened or refused.");
        }
    }

    /// <summary>Says why nothing was done; the exit code for it.</summary>
    public static async Task<int> RefuseAsync(string reason)
    {
        await Console.Error.WriteLineAsync(reason);
        return 1;
    }

    /// <summary>Shows how far a run is.</summary>
    public static Task ProgressAsync(int done, int total, CancellationToken cancellationToken) =>
        Console.Error.WriteAsync(string.Create(CultureInfo.InvariantCulture, $"\r{done} of {total} files").AsMemory(), cancellationToken);
}
