using System.Globalization;
using Catalogue.Domain.Text;

namespace Catalogue.Media.Photos;

/// <summary>A folder of files on this machine, with all that lies below it.</summary>
public sealed class FolderBundle : FileBundle
{
    private readonly string _root;

    private FolderBundle(string root, IReadOnlyList<Entry> entries) => (_root, Entries) = (root, entries);

    /// <inheritdoc />
    public override IReadOnlyList<Entry> Entries { get; }

    /// <inheritdoc />
    public override string? GuessedEncoding => null;

    /// <summary>Lists a folder.</summary>
    /// <param name="folder">The folder; a relative path starts at the working folder.</param>
    public static Opening Open(string folder)
    {
        var root = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder));
        if (!Directory.Exists(root))
            return new Opening.Refused($"There is no folder {root}.");
        try
        {
            // Links are listed, so that they are said, and never gone into.
            var found = Walk(new DirectoryInfo(root)).Take(MaxEntries + 1).ToList();
            if (found.Count > MaxEntries)
                return new Opening.Refused(string.Create(CultureInfo.InvariantCulture, $"The folder holds more than {MaxEntries} files; take them in several folders."));
            var seen = new HashSet<string>(StringComparer.Ordinal);
            var entries = found
                .Select(file => (File: file, Name: Path.GetRelativePath(root, file.FullName).Replace(Path.DirectorySeparatorChar, '/')))
                .OrderBy(item => item.Name, NaturalOrder.Instance)
                .Select((item, index) =>
                {
                    var isLink = item.File.LinkTarget is not null;
                    var bytes = isLink ? 0 : item.File.Length;
                    var refusal = isLink ? "It is a link to another file; links are not followed." : Judge(item.Name, bytes, seen);
                    return new Entry(index, item.Name, bytes, refusal, PictureFiles.SystemFile(item.Name) is not null);
                })
                .ToList();
            return new Opening.Opened(new FolderBundle(root, entries));
        }
        catch (Exception refused) when (refused is IOException or UnauthorizedAccessException)
        {
            return new Opening.Refused($"The folder {root} cannot be read: {refused.Message}");
        }
    }

    /// <inheritdoc />
    protected override Stream? OpenContent(Entry entry, out string? reason)
    {
        ArgumentNullException.ThrowIfNull(entry);
        try
        {
            reason = null;
            return new FileStream(Path.Combine(_root, entry.Name), new FileStreamOptions { Options = FileOptions.Asynchronous | FileOptions.SequentialScan });
        }
        catch (Exception refused) when (refused is IOException or UnauthorizedAccessException)
        {
            reason = $"It cannot be read: {refused.Message}";
            return null;
        }
    }

    private static IEnumerable<FileInfo> Walk(DirectoryInfo folder)
    {
        foreach (var file in folder.EnumerateFiles())
            yield return file;
        foreach (var inner in folder.EnumerateDirectories())
        {
            if (inner.LinkTarget is not null)
                yield return new FileInfo(inner.FullName);
            else
            {
                foreach (var file in Walk(inner))
                    yield return file;
            }
        }
    }
}
