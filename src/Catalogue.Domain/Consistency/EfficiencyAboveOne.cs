using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Consistency;

/// <summary>A measured efficiency above one, and more energy measured than the cells hold.</summary>
internal static class EfficiencyAboveOne
{
    public static IEnumerable<Contradiction> Find(ConsistencyFacts facts)
    {
        foreach (var test in facts.Tests)
        {
            if (test is { Unit: Unit.Ratio, Value: { } ratio } && test.Subject.Contains("efficiency", StringComparison.OrdinalIgnoreCase) && Line.IsBelow(1, test.Low ?? ratio))
                yield return new Contradiction(
                    "efficiency_above_one",
                    ContradictionSeverity.Contradiction,
                    $"{test.Subject}: more comes out than goes in.",
                    new StatedFact("measured efficiency", QuantityText.TwoDecimals(ratio), test.Conditions, test.Id.Value),
                    new StatedFact("at most", QuantityText.TwoDecimals(1), "conservation of energy", null));
            if (test is { Unit: Unit.WattHour, Value: { } energy } && PackEnergyOf(facts) is { High: { } held } pack && Line.IsBelow(held, test.Low ?? energy))
                yield return new Contradiction(
                    "energy_above_pack",
                    ContradictionSeverity.Contradiction,
                    $"{test.Subject}: more energy was measured than the cells hold.",
                    new StatedFact("measured", QuantityText.Of(energy, Unit.WattHour), test.Conditions, test.Id.Value),
                    new StatedFact("pack energy, computed", QuantityText.Of(pack.Nominal!.Value, Unit.WattHour), null, pack.Subject));
        }
    }

    /// <summary>The pack energy when there is one pack and it was computed.</summary>
    internal static Figures.Figure? PackEnergyOf(ConsistencyFacts facts) =>
        facts.Figures.Where(figure => figure.Rule == Figures.PackEnergy.Rule).ToList() is [{ Nominal: not null } only] ? only : null;
}
