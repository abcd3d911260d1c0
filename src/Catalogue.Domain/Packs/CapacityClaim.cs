using Catalogue.Domain.Quantities;
using Catalogue.Domain.Text;

namespace Catalogue.Domain.Packs;

/// <summary>Holds claimed ampere-hours, watt-hours and rated output against each other, in watt-hours.</summary>
/// <remarks>
/// <para><c>E_implied = Q_claimed · v</c>, <c>energy ratio = E_claimed / E_implied</c>, <c>η_implied = Q_output · V_out / E_implied</c></para>
/// <para>v is the voltage that the claim's <see cref="CapacityConvention"/> names. Source: definitions; the bands are a house rule.</para>
/// </remarks>
public static class CapacityClaim
{
    /// <summary>How the bands are named wherever a label is shown.</summary>
    public const string LabelSource = "house rule: display bands, a judgement";

    private const double ConsistentSpread = 0.03;
    private const double LooseSpread = 0.10;
    private const double LowestUsualEfficiency = 0.60;
    private const double HighestUsualEfficiency = 0.95;

    /// <summary>A ratio and its label.</summary>
    /// <typeparam name="TLabel">The labels.</typeparam>
    /// <param name="Ratio">The ratio with its spread.</param>
    /// <param name="Label">The label of its nominal case.</param>
    /// <param name="IsSettled">True when no value of the spread has another label.</param>
    public sealed record Labelled<TLabel>(Interval Ratio, TLabel Label, bool IsSettled);

    /// <summary>The energy that a claimed capacity stands for, in watt-hour.</summary>
    /// <param name="capacity">In ampere-hour.</param>
    /// <param name="convention">At which voltage it counts.</param>
    /// <param name="voltage">That voltage, in volt.</param>
    public static Reckoning<Interval> ImpliedEnergy(Interval? capacity, CapacityConvention convention, Interval? voltage) => new InputCheck()
        .Positive("claimed_capacity", capacity, Unit.AmpereHour)
        .Positive(SnakeCase.Code(convention), voltage, Unit.Volt)
        .Reckon(() => capacity!.Value * voltage!.Value);

    /// <summary>One energy over another, with its label: claimed over implied, or measured over claimed.</summary>
    /// <param name="energy">In watt-hour.</param>
    /// <param name="reference">In watt-hour.</param>
    public static Reckoning<Labelled<EnergyLabel>> Compare(Interval? energy, Interval? reference) => new InputCheck()
        .Positive("energy", energy, Unit.WattHour)
        .Positive("reference_energy", reference, Unit.WattHour)
        .Reckon(() =>
        {
            var ratio = energy!.Value / reference!.Value;
            var label = Label(ratio.Nominal);
            // The labels lie on both sides of 1, so equal ends may span another label.
            var spansOne = ratio.Low < 1 && ratio.High > 1;
            return new Labelled<EnergyLabel>(ratio, label, Label(ratio.Low) == label && Label(ratio.High) == label && (!spansOne || label is EnergyLabel.Consistent));
        });

    /// <summary>The efficiency that a rated output and a claimed energy imply, with its label.</summary>
    /// <param name="outputCharge">Rated output, in ampere-hour.</param>
    /// <param name="outputVoltage">The voltage it is rated at, in volt.</param>
    /// <param name="impliedEnergy">In watt-hour.</param>
    public static Reckoning<Labelled<EfficiencyLabel>> ImpliedEfficiency(Interval? outputCharge, Interval? outputVoltage, Interval? impliedEnergy) => new InputCheck()
        .Positive("rated_output", outputCharge, Unit.AmpereHour)
        .Positive("output_voltage", outputVoltage, Unit.Volt)
        .Positive("implied_energy", impliedEnergy, Unit.WattHour)
        .Reckon(() =>
        {
            var ratio = outputCharge!.Value * outputVoltage!.Value / impliedEnergy!.Value;
            var label = EfficiencyLabelOf(ratio.Nominal);
            return new Labelled<EfficiencyLabel>(ratio, label, EfficiencyLabelOf(ratio.Low) == label && EfficiencyLabelOf(ratio.High) == label);
        });

    private static EnergyLabel Label(double ratio) =>
        IsWithin(ratio, ConsistentSpread) ? EnergyLabel.Consistent : IsWithin(ratio, LooseSpread) ? EnergyLabel.Loose : EnergyLabel.Inconsistent;

    private static bool IsWithin(double ratio, double spread) => !Line.IsBelow(ratio, 1 - spread) && !Line.IsBelow(1 + spread, ratio);

    private static EfficiencyLabel EfficiencyLabelOf(double ratio) => ratio switch
    {
        _ when Line.IsBelow(1, ratio) => EfficiencyLabel.Impossible,
        _ when Line.IsBelow(HighestUsualEfficiency, ratio) => EfficiencyLabel.Unlikely,
        _ when Line.IsBelow(ratio, LowestUsualEfficiency) => EfficiencyLabel.CheckVoltageConvention,
        _ => EfficiencyLabel.Plausible,
    };
}
