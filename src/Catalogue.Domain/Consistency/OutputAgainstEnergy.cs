using Catalogue.Domain.Packs;
using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Consistency;

/// <summary>A rated output against the energy it comes from: what is claimed of the cells, and what they hold by computation.</summary>
/// <remarks>
/// <c>η_implied = Q_output · V_out / E</c>. Q_output is a claim of an output in ampere-hour, V_out the one voltage printed beside it; without one nothing is compared.
/// The labels are those of <see cref="CapacityClaim"/>, a house rule: above one both cannot be true, unlikely ones and very low ones are worth another look.
/// </remarks>
internal static class OutputAgainstEnergy
{
    public static IEnumerable<Contradiction> Find(ConsistencyFacts facts)
    {
        foreach (var output in facts.ClaimsIn(Unit.AmpereHour).Where(claim => claim.IsOutput))
        {
            if (output.PrintedVolts is not { } volts)
                continue;
            foreach (var (energy, words, fact) in Sources(facts))
            {
                if (CapacityClaim.ImpliedEfficiency(Interval.Exactly(output.Value), Interval.Exactly(volts), energy) is not Reckoning<CapacityClaim.Labelled<EfficiencyLabel>>.Done { Value: var implied }
                    || Weigh(implied) is not { } weight)
                    continue;
                yield return new Contradiction(
                    "output_against_energy",
                    weight,
                    $"The claimed {output.Subject} ({output.Places}) is {QuantityText.Number(100 * implied.Ratio.Nominal, 3)} % of {words}: {Says(implied.Label)}.",
                    output.As("claimed output") with { Source = $"{output.Places}: {QuantityText.Of(output.Value * volts, Unit.WattHour)} at {QuantityText.Of(volts, Unit.Volt)}" },
                    fact);
            }
        }
    }

    // Claimed energies, else claimed capacities at one cell's voltage; beside them what the cells hold.
    private static IEnumerable<(Interval Energy, string Words, StatedFact Fact)> Sources(ConsistencyFacts facts)
    {
        var energies = facts.ClaimsIn(Unit.WattHour).Where(claim => !claim.IsOutput).ToList();
        foreach (var energy in energies)
            yield return (Interval.Exactly(energy.Value), $"the claimed {energy.Subject} ({energy.Places})", energy.As("claimed energy"));
        if (energies.Count == 0 && facts.Cells.FirstOrDefault() is { } cell && facts.CellVoltage(cell) is { } voltage)
        {
            foreach (var capacity in facts.ClaimsIn(Unit.AmpereHour).Where(claim => !claim.IsOutput))
            {
                if (CapacityClaim.ImpliedEnergy(Interval.Exactly(capacity.Value), CapacityConvention.CellVoltage, voltage.Interval) is not Reckoning<Interval>.Done { Value: var implied })
                    continue;
                var at = $"{QuantityText.Of(implied, Unit.WattHour)} at {QuantityText.Of(voltage.Interval, Unit.Volt)}";
                yield return (implied, $"the claimed {capacity.Subject} ({capacity.Places}) at one cell's voltage", capacity.As("claimed capacity") with { Source = $"{capacity.Places}: {at}" });
            }
        }

        if (EfficiencyAboveOne.PackEnergyOf(facts) is { } pack)
            yield return (Interval.Create(pack.Low!.Value, pack.Nominal!.Value, pack.High!.Value), "what the cells hold", new StatedFact("pack energy, computed", QuantityText.Of(pack.Nominal.Value, Unit.WattHour), null, pack.Subject));
    }

    // More out than in is a contradiction only where no value of the spread says otherwise.
    private static ContradictionSeverity? Weigh(CapacityClaim.Labelled<EfficiencyLabel> implied) => implied.Label switch
    {
        EfficiencyLabel.Impossible => implied.IsSettled ? ContradictionSeverity.Contradiction : ContradictionSeverity.LookAgain,
        EfficiencyLabel.Unlikely or EfficiencyLabel.CheckVoltageConvention => ContradictionSeverity.LookAgain,
        _ => null,
    };

    private static string Says(EfficiencyLabel label) => label switch
    {
        EfficiencyLabel.Impossible => "more comes out than goes in",
        EfficiencyLabel.Unlikely => "converters seldom lose so little",
        _ => "so little that it may be counted at another voltage",
    };
}
