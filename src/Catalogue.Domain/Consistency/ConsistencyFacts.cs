using Catalogue.Domain.BenchLogs;
using Catalogue.Domain.Callouts;
using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Products;
using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Consistency;

/// <summary>The facts of one revision that are held against each other.</summary>
/// <param name="Facts">Components, ratings, rails, ports.</param>
/// <param name="Claims">All claims.</param>
/// <param name="Tests">All bench tests.</param>
/// <param name="Callouts">All callouts.</param>
/// <param name="Figures">The figures as they stand now.</param>
/// <param name="FamilyRatings">What is published of the same families elsewhere; empty when not asked for.</param>
public sealed record ConsistencyFacts(
    RevisionFacts Facts,
    IReadOnlyList<Claim> Claims,
    IReadOnlyList<BenchTest> Tests,
    IReadOnlyList<Callout> Callouts,
    IReadOnlyList<Figure> Figures,
    IReadOnlyList<ConsistencyFacts.FamilyRating> FamilyRatings)
{
    /// <summary>The ratings that published teardowns give a part family.</summary>
    /// <param name="Family">The family.</param>
    /// <param name="Kind">What is rated.</param>
    /// <param name="Low">The lowest nominal value found.</param>
    /// <param name="High">The highest nominal value found.</param>
    /// <param name="Teardowns">In how many teardowns.</param>
    public sealed record FamilyRating(FamilyId Family, RatingKind Kind, double Low, double High, int Teardowns);

    /// <summary>The families that components count to now, where a merge or a split led them on from the one they were saved with.</summary>
    public IReadOnlyDictionary<ComponentId, FamilyId> CurrentFamilies { get; init; } = new Dictionary<ComponentId, FamilyId>();

    /// <summary>The family that a component counts to now, or null.</summary>
    internal FamilyId? FamilyOf(BoardComponent component) => CurrentFamilies.TryGetValue(component.Id, out var current) ? current : component.FamilyId;

    /// <summary>The fitted cells, in the order of the list.</summary>
    internal IEnumerable<BoardComponent> Cells => Facts.Components.Where(component => component.IsFitted && component.FunctionClass is FunctionClass.Cell);

    /// <summary>The nominal voltage of one cell: recorded, else typical of the chemistry; null when neither is known.</summary>
    internal Given? CellVoltage(BoardComponent cell) =>
        new PartFacts(cell, [.. Facts.Ratings.Where(rating => rating.ComponentId == cell.Id)], null, Facts.CellChemistry).Best(RatingKind.CellVoltage) ?? DerivedRails.TypicalCell(Facts.CellChemistry)?.Nominal;

    /// <summary>The claims that give a number, those of one subject, value and port together, in the order of the list.</summary>
    internal IEnumerable<StatedClaim> StatedClaims => Claims
        .Where(claim => claim is { Value: > 0, Unit: not null })
        .GroupBy(claim => (Subject: claim.Subject.Trim().ToUpperInvariant(), claim.Unit, claim.Value, claim.PortId))
        .Select(same => new StatedClaim([.. same], same.Key.Value!.Value));

    /// <summary>Those of a unit.</summary>
    internal IEnumerable<StatedClaim> ClaimsIn(Unit unit) => StatedClaims.Where(claim => claim.Claims[0].Unit == unit);
}
