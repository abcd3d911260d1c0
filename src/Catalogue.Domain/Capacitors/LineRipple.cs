using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Capacitors;

/// <summary>Ripple of a bus capacitor behind a power-factor stage, or before a single-phase inverter, at twice the line frequency.</summary>
/// <remarks>
/// <c>ΔV_pp = P / (2π · f · C · V_bus)</c>, <c>I_rms = P / (√2 · V_bus)</c>. P in watt, f the line frequency in hertz, C in farad. Source: physics, for a sinusoidal
/// line current in phase; the switching ripple comes on top.
/// </remarks>
/// <param name="PeakToPeak">In volt.</param>
/// <param name="ShareOfBus">Peak to peak over the bus voltage, a ratio.</param>
/// <param name="RmsCurrent">At twice the line frequency, in ampere rms.</param>
public sealed record LineRipple(Interval PeakToPeak, Interval ShareOfBus, Interval RmsCurrent)
{
    /// <summary>Computes the ripple.</summary>
    /// <param name="power">In watt.</param>
    /// <param name="lineFrequency">In hertz.</param>
    /// <param name="capacitance">Of the whole bus, in farad.</param>
    /// <param name="busVoltage">Average, in volt.</param>
    public static Reckoning<LineRipple> Of(Interval? power, Interval? lineFrequency, Interval? capacitance, Interval? busVoltage) => new InputCheck()
        .Positive("power", power, Unit.Watt)
        .Positive("line_frequency", lineFrequency, Unit.Hertz)
        .Positive("capacitance", capacitance, Unit.Farad)
        .Positive("bus_voltage", busVoltage, Unit.Volt)
        .Reckon(() =>
        {
            var (p, f, c, v) = (power!.Value, lineFrequency!.Value, capacitance!.Value, busVoltage!.Value);
            return new LineRipple(
                Spread.Of((up, down) => up(p) / (2 * Math.PI * down(f) * down(c) * down(v))),
                Spread.Of((up, down) => up(p) / (2 * Math.PI * down(f) * down(c) * down(v) * down(v))),
                Spread.Of((up, down) => up(p) / (Math.Sqrt(2) * down(v))));
        });
}
