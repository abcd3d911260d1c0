using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Stress;

/// <summary>The rms current of a switch, from the shape of its current, in ampere rms. Source: definition of the rms value.</summary>
public static class WaveformRms
{
    private const double HighestPushPullDuty = 0.5;

    /// <summary>A rectangular pulse of amplitude I and duty D: <c>I · √D</c>.</summary>
    /// <param name="amplitude">In ampere.</param>
    /// <param name="duty">Above 0 to 1.</param>
    public static Reckoning<Interval> OfPulse(Interval? amplitude, Interval? duty) => new InputCheck()
        .NotNegative("amplitude", amplitude, Unit.Ampere)
        .Share("duty", duty)
        .Reckon((up, _) => up(amplitude!.Value) * Math.Sqrt(up(duty!.Value)));

    /// <summary>One side of a push-pull converter: <c>I_in / (2 · √D)</c>.</summary>
    /// <param name="inputCurrent">Average input current of the converter, in ampere.</param>
    /// <param name="duty">Of one side, above 0 to 0.5.</param>
    public static Reckoning<Interval> OfPushPullSide(Interval? inputCurrent, Interval? duty) => new InputCheck()
        .NotNegative("input_current", inputCurrent, Unit.Ampere)
        .Share("duty", duty, HighestPushPullDuty)
        .Reckon((up, down) => up(inputCurrent!.Value) / (2 * Math.Sqrt(down(duty!.Value))));

    /// <summary>Each switch of a full bridge that drives a load: <c>I_load / √2</c>.</summary>
    /// <param name="loadCurrent">In ampere rms.</param>
    public static Reckoning<Interval> OfBridgeSwitch(Interval? loadCurrent) => new InputCheck()
        .NotNegative("load_current_rms", loadCurrent, Unit.Ampere)
        .Reckon((up, _) => up(loadCurrent!.Value) / Math.Sqrt(2));
}
