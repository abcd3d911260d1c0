using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Stress;

/// <summary>What rectifiers lose while they conduct, in watt.</summary>
/// <remarks><c>P = V_f · I_avg + r_d · I_rms²</c>; a bridge always has two diodes in the path: <c>P = 2 · V_f · I_avg</c>. Source: physics.</remarks>
public static class DiodeLoss
{
    /// <summary>Loss of one diode.</summary>
    /// <param name="forwardVoltage">V_f, in volt; the threshold voltage where a resistance is given beside it.</param>
    /// <param name="averageCurrent">In ampere.</param>
    /// <param name="resistance">r_d, in ohm; null where V_f is the whole drop.</param>
    /// <param name="rmsCurrent">In ampere rms; needed with a resistance.</param>
    public static Reckoning<Interval> OfOne(Interval? forwardVoltage, Interval? averageCurrent, Interval? resistance = null, Interval? rmsCurrent = null)
    {
        var check = new InputCheck().Positive("forward_voltage", forwardVoltage, Unit.Volt).NotNegative("average_current", averageCurrent, Unit.Ampere);
        if (resistance is not { } ohms)
            return check.Reckon((up, _) => up(forwardVoltage!.Value) * up(averageCurrent!.Value));
        return check
            .NotNegative("diode_resistance", ohms, Unit.Ohm)
            .NotNegative("current_rms", rmsCurrent, Unit.Ampere)
            .Require(() => rmsCurrent!.Value.High >= averageCurrent!.Value.Low, "current_rms", "an rms current is never below the average")
            .Reckon((up, _) => (up(forwardVoltage!.Value) * up(averageCurrent!.Value)) + (up(ohms) * up(rmsCurrent!.Value) * up(rmsCurrent.Value)));
    }

    /// <summary>Loss of a full-bridge rectifier.</summary>
    /// <param name="forwardVoltage">Of one diode, in volt.</param>
    /// <param name="averageCurrent">Of the bridge's output, in ampere.</param>
    public static Reckoning<Interval> OfBridge(Interval? forwardVoltage, Interval? averageCurrent) =>
        OfOne(forwardVoltage, averageCurrent).Then(one => new Reckoning<Interval>.Done(Interval.Exactly(2) * one));
}
