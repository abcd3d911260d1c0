using Catalogue.Domain.Packs;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Text;

namespace Catalogue.Domain.Consistency;

/// <summary>What is claimed of a pack against its cells and against itself, in watt-hours, which alone compare.</summary>
/// <remarks>The labels are those of <see cref="CapacityClaim"/>, a house rule: loose is worth another look, inconsistent a contradiction.</remarks>
internal static class PackAgainstClaims
{
    public static IEnumerable<Contradiction> Find(ConsistencyFacts facts)
    {
        foreach (var (claim, wattHours) in facts.ClaimsIn(Unit.WattHour))
        {
            if (EfficiencyAboveOne.PackEnergyOf(facts) is { } pack
                && CapacityClaim.Compare(Interval.Exactly(wattHours), Interval.Create(pack.Low!.Value, pack.Nominal!.Value, pack.High!.Value)) is Reckoning<CapacityClaim.Labelled<EnergyLabel>>.Done { Value: var energy }
                && Weigh(energy.Label) is { } weight)
                yield return new Contradiction(
                    "pack_energy_against_claim",
                    weight,
                    $"The claimed energy is {QuantityText.Number(100 * energy.Ratio.Nominal, 3)} % of what the cells hold.",
                    new StatedFact("claimed energy", claim.AsPrinted, SnakeCase.Code(claim.Place).Replace('_', ' '), claim.Id.Value),
                    new StatedFact("pack energy, computed", QuantityText.Of(pack.Nominal.Value, Unit.WattHour), null, pack.Subject));

            // Capacity is claimed at one cell's voltage on power banks; where the pack's own voltage fits instead, nothing contradicts.
            foreach (var (capacityClaim, ampereHours) in facts.ClaimsIn(Unit.AmpereHour).Where(found => found.Claim.PortId is null))
            {
                var cell = facts.Cells.FirstOrDefault();
                if (cell is null || facts.CellVoltage(cell) is not { } voltage)
                    continue;
                var atCell = Label(wattHours, Interval.Exactly(ampereHours) * voltage.Interval);
                var atPack = Label(wattHours, Interval.Exactly(ampereHours * cell.SeriesCount) * voltage.Interval);
                if (atCell is { } one && atPack is { } other && Weigh(one) is { } found && Weigh(other) is not null)
                    yield return new Contradiction(
                        "claimed_capacity_against_energy",
                        found,
                        "The claimed capacity and the claimed energy do not belong to one pack, neither at one cell's voltage nor at the pack's.",
                        new StatedFact("claimed capacity", capacityClaim.AsPrinted, $"{QuantityText.Of(ampereHours * voltage.Interval.Nominal, Unit.WattHour)} at {QuantityText.Of(voltage.Interval.Nominal, Unit.Volt)}", capacityClaim.Id.Value),
                        new StatedFact("claimed energy", claim.AsPrinted, SnakeCase.Code(claim.Place).Replace('_', ' '), claim.Id.Value));
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
