using Catalogue.Domain.Components;
using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Figures;

/// <summary>The voltage across a part in use, by where in the circuit it stands.</summary>
/// <remarks>
/// <para>In line or across the rail, bridge, boost, buck, full-bridge secondary: the rail's highest voltage. Flyback primary:
/// <c>V_max + N · (V_out + V_f) + V_spike</c>. Push-pull primary: <c>2 · V_max</c>. Flyback secondary: <c>V_out + V_max / N</c>. Centre-tapped secondary:
/// <c>2 · V_max</c>. Mains full bridge: <c>√2 · V_max</c>. Mains half wave into a capacitor: <c>2 · √2 · V_max</c>. N is primary to secondary
/// turns; all in volt, V_max rms on mains. Ripple or a spike is added where recorded.</para>
/// <para>A peak voltage measured across the part itself is taken instead of all this. Source: textbook circuit analysis.</para>
/// </remarks>
public sealed record VoltageStress
{
    /// <summary>What the part is called in what is missing, such as <c>switch</c>.</summary>
    public required string Part { get; init; }

    /// <summary>Where it stands; null counts as across the rail for what is neither switch nor rectifier, and is missing for those.</summary>
    public CircuitPosition? Position { get; init; }

    /// <summary>True for a part whose position must be known.</summary>
    public bool NeedsPosition { get; init; }

    /// <summary>True when the part has a rail.</summary>
    public bool HasRail { get; init; }

    /// <summary>True when the rail is mains.</summary>
    public bool IsMains { get; init; }

    /// <summary>The rail's highest voltage, in volt; rms on mains.</summary>
    public Given? MaxVoltage { get; init; }

    /// <summary>The highest voltage across the part, measured, ringing included.</summary>
    public Given? PeakVoltage { get; init; }

    /// <summary>Peak of the ripple on top of the dc.</summary>
    public Given? RippleVoltage { get; init; }

    /// <summary>Spike on top of the working voltage.</summary>
    public Given? SpikeVoltage { get; init; }

    /// <summary>Output voltage behind the winding, in volt.</summary>
    public Given? OutputVoltage { get; init; }

    /// <summary>Forward voltage of the rectifier behind the winding, in volt; adds to the output where it is known.</summary>
    public Given? ForwardVoltage { get; init; }

    /// <summary>Primary to secondary turns.</summary>
    public Given? TurnsRatio { get; init; }

    /// <summary>True where a switching edge rings, so that a computed stress leaves something out.</summary>
    public bool Rings { get; init; }

    /// <summary>The stress, in volt; what is missing is named on the sheet.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="rms">True to stay with rms on mains, as for parts whose ac rating is rms.</param>
    internal Term On(Sheet sheet, bool rms)
    {
        if (PeakVoltage is not null && !rms)
            return sheet.Need(PeakVoltage, "V_peak", "peak voltage across the part", Unit.Volt, "peak_voltage", $"the voltage across the {Part}");
        if (NeedsPosition && Position is null)
        {
            sheet.Miss("circuit_position", $"where in the circuit the {Part} stands, or the peak voltage measured across it");
            return Term.Number(1);
        }

        if (!HasRail)
        {
            sheet.Miss("rail", $"the rail the {Part} sits on");
            return Term.Number(1);
        }

        var rail = sheet.Need(MaxVoltage, "V_max", IsMains ? "highest voltage of the mains, rms" : "highest voltage of the rail", Unit.Volt, "max_voltage", "the rail's highest voltage");
        var stress = Sum(sheet, rail, rms);
        if (RippleVoltage is not null)
            stress += sheet.Need(RippleVoltage, "V_ripple", "ripple, peak", Unit.Volt, "ripple_voltage", "the ripple", mayBeZero: true);
        if (SpikeVoltage is not null)
            stress += sheet.Need(SpikeVoltage, "V_spike", "spike", Unit.Volt, "spike_voltage", "the spike", mayBeZero: true);
        if (Rings && SpikeVoltage is null)
            sheet.LeaveOut("Ringing was not measured.");
        return sheet.Step("V_stress", "voltage across the part", Unit.Volt, stress);
    }

    private Term Sum(Sheet sheet, Term rail, bool rms)
    {
        switch (Position)
        {
            case CircuitPosition.FlybackPrimary:
                return Peak(rail) + (Turns() * Reflected());
            case CircuitPosition.FlybackSecondary:
                return Output() + (Peak(rail) / Turns());
            case CircuitPosition.PushPullPrimary or CircuitPosition.CentreTappedSecondary:
                return Term.Number(2) * Peak(rail);
            case CircuitPosition.MainsHalfWave:
                return Term.Number(2) * Term.SquareRoot(Term.Number(2)) * rail;
            case CircuitPosition.MainsBridge:
                return Term.SquareRoot(Term.Number(2)) * rail;
            default:
                return rms ? rail : Peak(rail);
        }

        Term Peak(Term voltage) => IsMains ? Term.SquareRoot(Term.Number(2)) * voltage : voltage;
        Term Reflected() => ForwardVoltage is null ? Output() : Output() + sheet.Need(ForwardVoltage, "V_f", "forward voltage of the rectifier", Unit.Volt, "forward_voltage", "the forward voltage", mayBeZero: true);
        Term Turns() => sheet.Need(TurnsRatio, "N", "turns, primary to secondary", Unit.Ratio, "turns_ratio", "the turns ratio of the transformer");
        Term Output() => sheet.Need(OutputVoltage, "V_out", "output voltage behind the winding", Unit.Volt, "output_voltage", "the output voltage behind the winding");
    }
}
