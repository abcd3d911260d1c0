using Catalogue.Domain.Figures;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Rails;

namespace Catalogue.Domain.Consistency;

/// <summary>The recorded voltages of a rail against those that follow from its cells or its port.</summary>
/// <remarks>House rule: 10 % apart is worth another look; a recorded full voltage above the derived one by more than that is a contradiction.</remarks>
internal static class RailAgainstCells
{
    private const double Apart = 0.10;

    public static IEnumerable<Contradiction> Find(ConsistencyFacts facts)
    {
        var bare = facts.Facts with { RailQuantities = [] };
        var derived = bare.ByRail().ToDictionary(rail => rail.Rail.Id);
        foreach (var recorded in facts.Facts.RailQuantities.Where(quantity => quantity.Kind is RailQuantityKind.NominalVoltage or RailQuantityKind.MaxVoltage))
        {
            if (!derived.TryGetValue(recorded.RailId, out var rail) || rail.Of(recorded.Kind) is not { } given)
                continue;
            var (above, below) = (recorded.Low > given.Interval.High * (1 + Apart), recorded.High < given.Interval.Low * (1 - Apart));
            if (above || below)
                yield return new Contradiction(
                    "rail_against_derived",
                    above && recorded.Kind is RailQuantityKind.MaxVoltage ? ContradictionSeverity.Contradiction : ContradictionSeverity.LookAgain,
                    $"{rail.Rail.Name}: the recorded {recorded.Kind.Word()} is not what follows from {(rail.Rail.PortId is null ? "its cells" : "its port")}.",
                    new StatedFact(recorded.Kind.Word(), QuantityText.Of(recorded.Interval, Unit.Volt), recorded.Source ?? recorded.Evidence.Word(), recorded.RailId.Value),
                    new StatedFact(recorded.Kind.Word() + ", derived", QuantityText.Of(given.Interval, Unit.Volt), given.Source, null));
        }
    }
}
