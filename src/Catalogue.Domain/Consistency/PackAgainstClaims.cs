using Catalogue.Domain.Packs;
using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Consistency;

/// <summary>What is claimed of a pack against its cells and against itself, in watt-hours, which alone compare.</summary>
/// <remarks>The labels are those of <see cref="CapacityClaim"/>, a house rule: loose is worth another look, inconsistent a contradiction.</remarks>
internal static class PackAgainstClaims
{
    public static IEnumerable<Contradiction> Find(ConsistencyFacts facts)
    {
        foreach (var energy in facts.ClaimsIn(Unit.WattHour).Where(claim => !claim.IsOutput))
        {
            if (EfficiencyAboveOne.PackEnergyOf(facts) is { } pack
                && CapacityClaim.Compare(Interval.Exactly(energy.Value), Interval.Create(pack.Low!.Value, pack.Nominal!.Value, pack.High!.Value)) is Reckoning<CapacityClaim.Labelled<EnergyLabel>>.Done { Value: var compared }
                && Weigh(compared.Label) is { } weight)
                yield return new Contradiction(
                    "pack_energy_against_claim",
                    weight,
                    $"The claimed {energy.Subject} ({energy.Places}) is {QuantityText.Number(100 * compared.Ratio.Nominal, 3)} % of what the cells hold.",
                    energy.As("claimed energy"),
                    new StatedFact("pack energy, computed", QuantityText.Of(pack.Nominal.Value, Unit.WattHour), null, pack.Subject));

            // Capacity is claimed at one cell's voltage on power banks; where the pack's own voltage fits instead, nothing contradicts.
            foreach (var capacity in facts.ClaimsIn(Unit.AmpereHour).Where(claim => !claim.IsOutput))
            {
                var cell = facts.Cells.FirstOrDefault();
                if (cell is null || facts.CellVoltage(cell) is not { } voltage)
                    continue;
                var atCell = Label(energy.Value, Interval.Exactly(capacity.Value) * voltage.Interval);
                var atPack = Label(energy.Value, Interval.Exactly(capacity.Value * cell.SeriesCount) * voltage.Interval);
                if (atCell is { } one && atPack is { } other && Weigh(one) is { } found && Weigh(other) is not null)
                    yield return new Contradiction(
                        "claimed_capacity_against_energy",
                        found,
                        $"The claimed {capacity.Subject} ({capacity.Places}) and the claimed {energy.Subject} ({energy.Places}) do not belong to one pack, neither at one cell's voltage nor at the pack's.",
                        capacity.As("claimed capacity") with { Source = $"{capacity.Places}: {QuantityText.Of(capacity.Value * voltage.Interval.Nominal, Unit.WattHour)} at {QuantityText.Of(voltage.Interval.Nominal, Unit.Volt)}" },
                        energy.As("claimed energy"));
            }
        }
    }

    private static EnergyLabel? Label(double wattHours, Interval implied) =>
        CapacityClaim.Compare(Interval.Exactly(wattHours), implied) is Reckoning<CapacityClaim.Labelled<EnergyLabel>>.Done { Value.Label: var label } ? label : null;

    private static ContradictionSeverity? Weigh(EnergyLabel label) => label switch
    {
        EnergyLabel.Inconsistent => ContradictionSeverity.Contradiction,
        EnergyLabel.Loose => ContradictionSeverity.LookAgain,
        _ => null,
    };
}
