namespace Catalogue.Media.Photos;

/// <summary>
/// Files that came together, pictures and perhaps a text beside them: a zip file or a folder. Read and never believed: names are labels, every file that
/// is not taken says why, links are not followed. Use from one thread.
/// </summary>
public abstract class FileBundle : IDisposable
{
    /// <summary>The longest name that is read, in characters.</summary>
    public const int MaxNameCharacters = 1000;

    /// <summary>The most files, folders included. House rule.</summary>
    public const int MaxEntries = 5000;

    private static readonly string[] ArchiveEndings = [".zip", ".7z", ".rar", ".tar", ".gz", ".tgz", ".xz", ".bz2", ".jar"];

    /// <summary>One file.</summary>
    /// <param name="Index">Its place among <see cref="Entries"/>, from 0.</param>
    /// <param name="Name">Its name with forward slashes, from the bundle's root; a label, never a path to write to.</param>
    /// <param name="Bytes">How long it says it is.</param>
    /// <param name="Refusal">Why it is not read, or null.</param>
    /// <param name="IsOfSystem">True for what an operating system leaves beside people's files; then the refusal says so.</param>
    public sealed record Entry(int Index, string Name, long Bytes, string? Refusal, bool IsOfSystem);

    /// <summary>What came of opening a bundle.</summary>
    public abstract record Opening
    {
        private Opening()
        {
        }

        /// <summary>It can be read.</summary>
        public sealed record Opened(FileBundle Bundle) : Opening;

        /// <summary>It cannot.</summary>
        /// <param name="Reason">Why, and what would be right.</param>
        public sealed record Refused(string Reason) : Opening;
    }

    /// <summary>The files in it. Those of a zip in their order there, those of a folder by name.</summary>
    public abstract IReadOnlyList<Entry> Entries { get; }

    /// <summary>IANA name of the encoding that was guessed for names that do not say theirs; null where nothing was guessed.</summary>
    public abstract string? GuessedEncoding { get; }

    /// <summary>Opens a file; null when it may not be read, and then the reason says why.</summary>
    /// <param name="entry">One of <see cref="Entries"/>.</param>
    /// <param name="reason">Why it is not read, or null.</param>
    /// <remarks>Reading throws <see cref="InvalidDataException"/> where packed data are damaged.</remarks>
    public Stream? Open(Entry entry, out string? reason)
    {
        ArgumentNullException.ThrowIfNull(entry);
        reason = entry.Refusal;
        return reason is null ? OpenContent(entry, out reason) : null;
    }

    /// <summary>The first bytes of a file, as many as there are up to <paramref name="count"/>; empty when it cannot be read.</summary>
    public byte[] Peek(Entry entry, int count)
    {
        using var stream = Open(entry, out _);
        if (stream is null)
            return [];
        var start = new byte[count];
        try
        {
            return start[..stream.ReadAtLeast(start, count, throwOnEndOfStream: false)];
        }
        catch (Exception damaged) when (damaged is InvalidDataException or IOException)
        {
            return [];
        }
    }

    /// <inheritdoc />
    public void Dispose()
    {
        Dispose(true);
        GC.SuppressFinalize(this);
    }

    /// <summary>Opens a file that nothing speaks against.</summary>
    protected abstract Stream? OpenContent(Entry entry, out string? reason);

    /// <summary>Lets go of what the bundle holds open.</summary>
    protected virtual void Dispose(bool disposing)
    {
    }

    /// <summary>What speaks against a file by its name and length alone, or null.</summary>
    /// <param name="name">Its name as kept.</param>
    /// <param name="bytes">Its length.</param>
    /// <param name="seen">Names seen so far; this one joins them.</param>
    private protected static string? Judge(string name, long bytes, HashSet<string> seen) =>
        PictureFiles.SystemFile(name) is { } system ? system
        : name.Length == 0 ? "It has no name."
        : name.Length >= MaxNameCharacters ? "Its name is too long."
        : PictureFiles.LeadsOut(name) ? "Its name leads out of the folder; nothing is read from there. Pack the files again with plain names."
        : !seen.Add(name) ? "Another file has the same name. Rename one of the two."
        : Array.Exists(ArchiveEndings, ending => name.EndsWith(ending, StringComparison.OrdinalIgnoreCase)) ? "It is an archive inside, which is not opened. Put the pictures straight into one zip file."
        : bytes == 0 ? "It is empty."
        : bytes > ImageLimits.DefaultMaxUploadBytes ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"It is longer than {ImageLimits.DefaultMaxUploadBytes / (1024 * 1024)} MiB.")
        : null;

    /// <summary>A name as it is kept: forward slashes, no control characters, not too long, no “here” in front.</summary>
    private protected static string Keep(string written)
    {
        // Some programs write the separators of their own system.
        var slashed = written.Replace('\\', '/');
        var name = Domain.Text.PlainText.Clean(slashed.Length > MaxNameCharacters ? slashed[..MaxNameCharacters] : slashed) ?? "";
        return name.StartsWith("./", StringComparison.Ordinal) ? name[2..] : name;
    }
}
