using Catalogue.Domain.Identification;

namespace Catalogue.Domain.Families;

/// <summary>A family beside another one.</summary>
public sealed record FamilyNeighbour
{
    /// <summary>The neighbour.</summary>
    public required FamilyFacts Family { get; init; }

    /// <summary>Why it stands there, in words, the reviewer's word first; never empty.</summary>
    public required IReadOnlyList<string> Reasons { get; init; }

    /// <summary>The reviewer's word, or null.</summary>
    public FamilyWord? Relation { get; init; }

    /// <summary>How the names are alike; null among second sources, and where only the reviewer says so.</summary>
    public NameLikeness? Likeness { get; init; }

    /// <summary>How it could take the place; null among look-alikes and versions.</summary>
    public SecondSource? Source { get; init; }
}
