namespace Catalogue.Data.Archives;

/// <summary>What an import did, or would do.</summary>
public sealed record ArchiveReport
{
    /// <summary>The most names of a list; the counts beside it are complete.</summary>
    public const int MaxNamed = 200;

    /// <summary>True when nothing was changed and this is what would be.</summary>
    public required bool DryRun { get; init; }

    /// <summary>The lab that made the archive.</summary>
    public required string Lab { get; init; }

    /// <summary>When it was made.</summary>
    public required DateTimeOffset MadeAt { get; init; }

    /// <summary>True for the form that is given away.</summary>
    public required bool IsForOthers { get; init; }

    /// <summary>True when published revisions arrive as published; else the newest of each teardown arrives as a draft for review.</summary>
    public required bool KeepsPublished { get; init; }

    /// <summary>The teardowns by the number that they had.</summary>
    public required IReadOnlyList<ArchivedItem> Teardowns { get; init; }

    /// <summary>The part families.</summary>
    public required Matched Families { get; init; }

    /// <summary>The makers.</summary>
    public required Matched Makers { get; init; }

    /// <summary>The picture files.</summary>
    public required Pictures Photos { get; init; }

    /// <summary>What is done with a teardown.</summary>
    public enum Action
    {
        /// <summary>It is not here and is brought in.</summary>
        New,

        /// <summary>It is here and says the same; nothing is done.</summary>
        Same,

        /// <summary>It is here and says something else; what is here stays.</summary>
        Differing,

        /// <summary>All its revisions were withdrawn, and nothing arrives as published; nothing is done.</summary>
        LeftOut,
    }

    /// <summary>A teardown.</summary>
    /// <param name="Slug">The address that it had.</param>
    /// <param name="Action">What is done with it.</param>
    /// <param name="Address">The address that it has here; null when it is left out.</param>
    /// <param name="Revisions">How many revisions are brought in; 0 unless it is new.</param>
    /// <param name="Components">How many components the newest of them has.</param>
    /// <param name="Notes">What a person should know.</param>
    /// <param name="History">Its publications as text, oldest first, where they are not brought in as such; else empty.</param>
    public sealed record ArchivedItem(string Slug, Action Action, string? Address, int Revisions, int Components, IReadOnlyList<string> Notes, IReadOnlyList<string> History);

    /// <summary>Families or makers: found by their match key or name alone, never by likeness. What is here is never changed.</summary>
    /// <param name="New">How many are brought in.</param>
    /// <param name="Same">How many are here and say the same.</param>
    /// <param name="Differing">How many are here and say something else.</param>
    /// <param name="NewNames">The first of the new ones.</param>
    /// <param name="Differences">The first of the differing ones, with what differs.</param>
    /// <param name="Conflicts">Names and addresses that belong to something else here, and what becomes of them.</param>
    public sealed record Matched(int New, int Same, int Differing, IReadOnlyList<string> NewNames, IReadOnlyList<string> Differences, IReadOnlyList<string> Conflicts);

    /// <summary>Picture files.</summary>
    /// <param name="New">How many are taken in.</param>
    /// <param name="Known">How many are here.</param>
    /// <param name="Missing">How many the other lab had lost; their records come without a picture.</param>
    public sealed record Pictures(int New, int Known, int Missing);
}
