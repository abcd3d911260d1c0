using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Capacitors;

/// <summary>How far the capacitor behind a mains bridge falls between two peaks.</summary>
/// <remarks>
/// <para><c>C = 2 · P · t_d / (V_pk² − V_min²)</c>, <c>t_d = (½ + asin(V_min / V_pk) / π) / (2 · f)</c>, <c>V_pk = √2 · V_ac</c></para>
/// <para>
/// P in watt drawn from the capacitor, constant; C in farad, f the line frequency in hertz, t_d the time from one peak until the bridge conducts again, in second.
/// Solved for V_min by bisection to 1e-14 of the peak. Source: physics, for stiff mains and without the drop of the diodes.
/// </para>
/// </remarks>
/// <param name="Peak">V_pk, in volt.</param>
/// <param name="Valley">V_min, in volt; its low case is zero where the capacitor cannot hold the load in the worst case.</param>
/// <param name="Ripple">Peak to peak, in volt.</param>
/// <param name="DischargeTime">t_d, in second.</param>
/// <param name="CollapsesAtWorst">True when the worst case of the inputs leaves no voltage.</param>
public sealed record RectifierValley(Interval Peak, Interval Valley, Interval Ripple, Interval DischargeTime, bool CollapsesAtWorst)
{
    // 2^-47 is below 1e-14.
    private const int Halvings = 47;

    /// <summary>Solves for the valley; refused where the capacitor cannot hold the load even in the nominal case.</summary>
    /// <param name="inputPower">In watt.</param>
    /// <param name="mainsVoltage">In volt rms.</param>
    /// <param name="lineFrequency">In hertz.</param>
    /// <param name="capacitance">In farad.</param>
    public static Reckoning<RectifierValley> Of(Interval? inputPower, Interval? mainsVoltage, Interval? lineFrequency, Interval? capacitance) => new InputCheck()
        .Positive("input_power", inputPower, Unit.Watt)
        .Positive("mains_voltage", mainsVoltage, Unit.Volt)
        .Positive("line_frequency", lineFrequency, Unit.Hertz)
        .Positive("capacitance", capacitance, Unit.Farad)
        .Require(
            () => Share(inputPower!.Value.Nominal, mainsVoltage!.Value.Nominal, lineFrequency!.Value.Nominal, capacitance!.Value.Nominal) > 0,
            "capacitance",
            "this capacitance cannot hold the load from one peak of the mains to the next")
        .Reckon(() =>
        {
            var (p, v, f, c) = (inputPower!.Value, mainsVoltage!.Value, lineFrequency!.Value, capacitance!.Value);
            var valley = Spread.Of((up, down) => PeakOf(up(v)) * Share(down(p), up(v), up(f), up(c)));
            var collapses = valley.Low <= 0;
            var peak = Spread.Of((up, _) => PeakOf(up(v)));
            var ripple = Spread.Of((up, down) => PeakOf(down(v)) * (1 - Share(up(p), down(v), down(f), down(c))));
            return new RectifierValley(
                peak,
                valley,
                // Where nothing is left, the ripple is the peak and rises with it.
                collapses ? Interval.Create(ripple.Low, ripple.Nominal, peak.High) : ripple,
                Spread.Of((up, down) => Conduction(Share(down(p), up(v), down(f), up(c)), down(f))),
                collapses);
        });

    private static double PeakOf(double rms) => Math.Sqrt(2) * rms;

    private static double Conduction(double share, double frequency) => (0.5 + (Math.Asin(share) / Math.PI)) / (2 * frequency);

    /// <summary>The valley as a share s of the peak, 0 to 1: the solution of <c>1 − s² = k · (½ + asin(s) / π)</c>. It falls with k and is zero from 2 on.</summary>
    /// <param name="load">k, what the load takes in one period over twice what the capacitor holds at the peak: <c>P / (f · C · V_pk²)</c>; above zero.</param>
    internal static double ShareOf(double load)
    {
        // What the capacitor gives falls with the share and what the load takes rises, so they meet at most once.
        var (low, high) = (0.0, 1.0);
        if (!(Surplus(0) > 0))
            return 0;
        for (var i = 0; i < Halvings; i++)
        {
            var middle = (low + high) / 2;
            if (Surplus(middle) > 0)
                low = middle;
            else
                high = middle;
        }

        return low;

        double Surplus(double share) => 1 - (share * share) - (load * (0.5 + (Math.Asin(share) / Math.PI)));
    }

    private static double Share(double power, double mains, double frequency, double capacitance) => ShareOf(power / (frequency * capacitance * PeakOf(mains) * PeakOf(mains)));
}
