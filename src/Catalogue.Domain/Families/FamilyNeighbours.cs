using Catalogue.Domain.Identification;

namespace Catalogue.Domain.Families;

/// <summary>The families beside one: what could take its place, what is easily taken for it, what differs by an ending.</summary>
/// <remarks>
/// House rule. The reviewer's word goes before what is computed: <see cref="FamilyRelationKind.Unrelated"/> hides a family from every list,
/// <see cref="FamilyRelationKind.SecondSource"/> puts it among the second sources whatever its ratings say (what falls short is still said),
/// <see cref="FamilyRelationKind.LookAlike"/> puts it among the look-alikes alone.
/// </remarks>
/// <param name="SecondSources">What could take its place: confirmed ones first, then those of which more is known.</param>
/// <param name="LookAlikes">Names easily mistaken for its names, the likest first.</param>
/// <param name="Versions">Names of the same stem with another ending, in the order of their names.</param>
public sealed record FamilyNeighbours(IReadOnlyList<FamilyNeighbour> SecondSources, IReadOnlyList<FamilyNeighbour> LookAlikes, IReadOnlyList<FamilyNeighbour> Versions)
{
    /// <summary>Most entries of each list.</summary>
    public const int MaxInList = 20;

    /// <summary>Sorts out the neighbours of a family.</summary>
    /// <param name="asked">The family.</param>
    /// <param name="others">Families that may be neighbours, each once; the asked one among them is left out.</param>
    /// <param name="words">What reviewers said, by the other family.</param>
    public static FamilyNeighbours Of(FamilyFacts asked, IEnumerable<FamilyFacts> others, IReadOnlyDictionary<FamilyId, FamilyWord> words)
    {
        ArgumentNullException.ThrowIfNull(asked);
        ArgumentNullException.ThrowIfNull(others);
        ArgumentNullException.ThrowIfNull(words);
        var (sources, alike, versions) = (new List<FamilyNeighbour>(), new List<FamilyNeighbour>(), new List<FamilyNeighbour>());
        foreach (var other in others.Where(other => other.Id != asked.Id))
        {
            var word = words.GetValueOrDefault(other.Id);
            if (word?.Kind is FamilyRelationKind.Unrelated)
                continue;
            if (word?.Kind is not FamilyRelationKind.LookAlike && SecondSource.Of(asked, other) is var source && (source.IsOffered || word?.Kind is FamilyRelationKind.SecondSource))
                sources.Add(new FamilyNeighbour { Family = other, Relation = word, Source = source, Reasons = [.. Said(word, FamilyRelationKind.SecondSource), .. source.Reasons] });
            var likeness = Likeness(asked, other);
            if (word?.Kind is FamilyRelationKind.LookAlike || likeness is { Likeness.Kind: NameLikenessKind.LookAlike })
                alike.Add(new FamilyNeighbour { Family = other, Relation = word, Likeness = likeness?.Likeness, Reasons = [.. Said(word, FamilyRelationKind.LookAlike), .. likeness?.Reasons ?? []] });
            else if (likeness is { } version)
                versions.Add(new FamilyNeighbour { Family = other, Relation = word, Likeness = version.Likeness, Reasons = version.Reasons });
        }

        return new(
            [
                .. sources
                    .OrderByDescending(one => one.Relation?.Kind is FamilyRelationKind.SecondSource)
                    .ThenBy(one => one.Source!.NotKnown)
                    .ThenByDescending(one => one.Source!.Covered)
                    .ThenByDescending(one => one.Source!.DesignsInSharedRole)
                    .ThenBy(one => one.Source!.Package.Kind)
                    .ThenByDescending(one => one.Family.Designs)
                    .ThenBy(one => one.Family.Name, StringComparer.Ordinal)
                    .Take(MaxInList),
            ],
            [
                .. alike
                    .OrderByDescending(one => one.Relation is not null)
                    .ThenByDescending(one => one.Likeness?.Similarity ?? 0)
                    .ThenBy(one => one.Family.Name, StringComparer.Ordinal)
                    .Take(MaxInList),
            ],
            [.. versions.OrderBy(one => one.Family.Name, StringComparer.Ordinal).Take(MaxInList)]);
    }

    private static IEnumerable<string> Said(FamilyWord? word, FamilyRelationKind kind)
    {
        if (word is null || word.Kind != kind)
            yield break;
        var said = kind is FamilyRelationKind.SecondSource ? "a reviewer confirmed it as a second source" : "a reviewer marked it as a look-alike";
        yield return word.Note is { } note ? $"{said}: {note}" : said;
    }

    // Base number against base number where these are alike; else the likest of all their numbers.
    private static (NameLikeness Likeness, IReadOnlyList<string> Reasons)? Likeness(FamilyFacts asked, FamilyFacts other)
    {
        if (NameLikeness.Of(asked.Name, other.Name) is { } own)
            return (own, own.Differences);
        var best = asked.OtherNames.Prepend(asked.Name)
            .SelectMany(name => other.OtherNames.Prepend(other.Name).Select(otherName => (Name: name, Other: otherName, Likeness: NameLikeness.Of(name, otherName))))
            .Where(pair => pair.Likeness is not null)
            .OrderByDescending(pair => pair.Likeness!.Kind)
            .ThenByDescending(pair => pair.Likeness!.Similarity)
            .FirstOrDefault();
        return best.Likeness is { } alike ? (alike, [$"by the numbers {best.Name} and {best.Other}", .. alike.Differences]) : null;
    }
}
