using System.Reflection;

namespace Catalogue.Data.Archives;

/// <summary>What every archive says of its own form: the description for people and the JSON Schema of each kind of line.</summary>
internal static class ArchiveDescription
{
    private static readonly Assembly Own = typeof(ArchiveDescription).Assembly;

    /// <summary>The entries and their text.</summary>
    public static IReadOnlyList<(string Name, Func<Stream> Text)> Files { get; } =
    [
        (ArchiveForm.ReadmeEntry, () => Open("archive.md")),
        .. ArchiveKind.All.Select(kind => (ArchiveForm.SchemaEntry(kind.Name), (Func<Stream>)(() => Open($"archive.{kind.Name}.json")))),
    ];

    private static Stream Open(string name) => Own.GetManifestResourceStream(name) ?? throw new InvalidOperationException($"The program was built without {name}.");
}
