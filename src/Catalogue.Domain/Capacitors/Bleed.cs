using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Capacitors;

/// <summary>How long a resistor takes to drain a capacitor, and what it costs. A computed time proves nothing: a bleeder may be open.</summary>
/// <remarks>
/// <c>t = R · C · ln(V / V_t)</c>, <c>P = V² / R</c>. Without a recorded resistor the time is unknown. Source: physics.
/// </remarks>
public static class Bleed
{
    /// <summary>The longest time constant of a line capacitor and its bleeder that passes a first look, in second (the rule of IEC 60950-1 for more than 0.1 µF).</summary>
    public const double LineTimeConstantSeconds = 1;

    /// <summary>Time from one voltage down to another, in second; zero where it starts at or below.</summary>
    /// <param name="resistance">In ohm.</param>
    /// <param name="capacitance">In farad.</param>
    /// <param name="voltage">Where it starts, in volt.</param>
    /// <param name="targetVoltage">Where it ends, in volt.</param>
    public static Reckoning<Interval> Time(Interval? resistance, Interval? capacitance, Interval? voltage, Interval? targetVoltage) => Check(resistance)
        .Positive("capacitance", capacitance, Unit.Farad)
        .Positive("voltage", voltage, Unit.Volt)
        .Positive("target_voltage", targetVoltage, Unit.Volt)
        .Reckon((up, down) => up(resistance!.Value) * up(capacitance!.Value) * Math.Max(0, Math.Log(up(voltage!.Value) / down(targetVoltage!.Value))));

    /// <summary>What the resistor loses all the time, in watt.</summary>
    /// <param name="resistance">In ohm.</param>
    /// <param name="voltage">In volt; rms on ac.</param>
    public static Reckoning<Interval> Power(Interval? resistance, Interval? voltage) => Check(resistance)
        .Positive("voltage", voltage, Unit.Volt)
        .Reckon((up, down) => up(voltage!.Value) * up(voltage.Value) / down(resistance!.Value));

    /// <summary>The time constant, in second: <c>R · C</c>, to hold against <see cref="LineTimeConstantSeconds"/>.</summary>
    /// <param name="resistance">In ohm.</param>
    /// <param name="capacitance">In farad.</param>
    public static Reckoning<Interval> TimeConstant(Interval? resistance, Interval? capacitance) => Check(resistance)
        .Positive("capacitance", capacitance, Unit.Farad)
        .Reckon((up, _) => up(resistance!.Value) * up(capacitance!.Value));

    private static InputCheck Check(Interval? resistance) => new InputCheck().Positive("bleed_resistance", resistance, Unit.Ohm);
}
