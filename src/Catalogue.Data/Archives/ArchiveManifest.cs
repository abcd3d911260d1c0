namespace Catalogue.Data.Archives;

/// <summary>What an archive is and holds.</summary>
public sealed record ArchiveManifest
{
    /// <summary><see cref="ArchiveForm.Name"/>.</summary>
    public required string Form { get; init; }

    /// <summary>The version of the form, from 1.</summary>
    public required int Version { get; init; }

    /// <summary>When it was made.</summary>
    public required DateTimeOffset MadeAt { get; init; }

    /// <summary>The lab that made it.</summary>
    public required string Lab { get; init; }

    /// <summary>The public address of the lab's catalogue, or null.</summary>
    public string? LabAddress { get; init; }

    /// <summary>The licence of the content, or null when none is given.</summary>
    public string? Licence { get; init; }

    /// <summary>The program that made it, with its version.</summary>
    public required string MadeWith { get; init; }

    /// <summary>True for the form that is given away: public copies of the photos, and nothing that the lab keeps to itself.</summary>
    public required bool IsForOthers { get; init; }

    /// <summary>True when drafts are in it.</summary>
    public required bool HoldsDrafts { get; init; }

    /// <summary>How many lines of each kind it holds; kinds of which there is none are left out.</summary>
    public required IReadOnlyDictionary<string, long> Counts { get; init; }

    /// <summary>All entries but the manifest itself, in the order in which they were written.</summary>
    public required IReadOnlyList<Entry> Entries { get; init; }

    /// <summary>An entry.</summary>
    /// <param name="Name">Its name.</param>
    /// <param name="Bytes">Its length, unpacked.</param>
    /// <param name="Sha256">SHA-256 of its bytes, unpacked, in lower-case hex.</param>
    public sealed record Entry(string Name, long Bytes, string Sha256);
}
