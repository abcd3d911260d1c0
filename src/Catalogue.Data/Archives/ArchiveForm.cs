using System.Text.RegularExpressions;

namespace Catalogue.Data.Archives;

/// <summary>The open form of a teardown archive: names and limits. <c>docs/archive.md</c> describes it.</summary>
public static partial class ArchiveForm
{
    /// <summary>What the manifest calls it.</summary>
    public const string Name = "teardown_archive";

    /// <summary>The version that is written, and the newest that is read.</summary>
    public const int Version = 1;

    /// <summary>The manifest; the last entry that is written.</summary>
    public const string ManifestEntry = "manifest.json";

    /// <summary>The description of the form.</summary>
    public const string ReadmeEntry = "README.md";

    /// <summary>One line a maker.</summary>
    public const string MakersEntry = "makers.jsonl";

    /// <summary>One line a part family.</summary>
    public const string FamiliesEntry = "families.jsonl";

    /// <summary>One line a picture file.</summary>
    public const string PhotosEntry = "photos.jsonl";

    /// <summary>Longest archive in bytes.</summary>
    public const long MaxFileBytes = 8L * 1024 * 1024 * 1024;

    /// <summary>The most entries of an archive.</summary>
    public const int MaxEntries = 300_000;

    /// <summary>The most bytes of the zip's own directory.</summary>
    public const long MaxDirectoryBytes = 96L * 1024 * 1024;

    /// <summary>The most bytes of all entries when they are unpacked.</summary>
    public const long MaxUnpackedBytes = 32L * 1024 * 1024 * 1024;

    /// <summary>The most bytes of the manifest when it is unpacked.</summary>
    public const int MaxManifestBytes = 96 * 1024 * 1024;

    /// <summary>Longest line in bytes.</summary>
    public const int MaxLineBytes = 4 * 1024 * 1024;

    /// <summary>How much larger than packed an entry may be. Lines of records pack to a twentieth at best; what packs to less is no record.</summary>
    public const int MaxPackingRatio = 200;

    /// <summary>Entries up to this many bytes are not held against <see cref="MaxPackingRatio"/>.</summary>
    public const int SmallEntryBytes = 1024 * 1024;

    /// <summary>The lines of a teardown.</summary>
    public static string TeardownEntry(string slug) => $"teardowns/{slug}.jsonl";

    /// <summary>A picture file.</summary>
    /// <param name="sha256">SHA-256 of the file, lower-case hex.</param>
    /// <param name="kind"><c>jpeg</c>, <c>png</c> or <c>webp</c>.</param>
    public static string PhotoEntry(string sha256, string kind) => "photos/" + StoreName(sha256, kind);

    /// <summary>The JSON Schema of a kind of line.</summary>
    public static string SchemaEntry(string kind) => $"schema/{kind}.json";

    /// <summary>The name of an original in the media store.</summary>
    internal static string StoreName(string sha256, string kind) => $"{sha256}.{(kind == "jpeg" ? "jpg" : kind)}";

    /// <summary>True for a name that an entry may have. All others are refused, so that no name ever leads anywhere.</summary>
    internal static bool IsEntryName(string name) => EntryName().IsMatch(name);

    /// <summary>True for the folders that some programs put into a zip beside their files.</summary>
    internal static bool IsFolderName(string name) => name is "teardowns/" or "photos/" or "schema/";

    [GeneratedRegex(@"\A(manifest\.json|README\.md|(makers|families|photos)\.jsonl|schema/[a-z_]{1,40}\.json|teardowns/[a-z0-9-]{1,96}\.jsonl|photos/[0-9a-f]{64}\.(jpg|png|webp))\z", RegexOptions.CultureInvariant)]
    private static partial Regex EntryName();
}
