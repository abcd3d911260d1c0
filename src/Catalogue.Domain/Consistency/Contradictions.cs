namespace Catalogue.Domain.Consistency;

/// <summary>All that does not go together within one revision.</summary>
public static class Contradictions
{
    private static readonly Func<ConsistencyFacts, IEnumerable<Contradiction>>[] Rules =
    [
        MarginBeyondLine.Find,
        PackAgainstClaims.Find,
        OutputAgainstEnergy.Find,
        EfficiencyAboveOne.Find,
        ClaimedAgainstMeasured.Find,
        RailAgainstCells.Find,
        PortsAgainstClaims.Find,
        QuantityAgainstArrangement.Find,
        CalloutsAgainstQuantity.Find,
        RatingAgainstFamily.Find,
    ];

    /// <summary>Finds them, contradictions before what is worth another look.</summary>
    public static IReadOnlyList<Contradiction> Find(ConsistencyFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return [.. Rules.SelectMany(rule => rule(facts)).OrderBy(found => found.Severity)];
    }
}
