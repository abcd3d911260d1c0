using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Stress;

/// <summary>The junction temperature that a loss leads to, steady state.</summary>
/// <remarks>
/// <para><c>T_j = T_a + P · R_th</c>, T in °C, P in watt, R_th in °C/W from the junction to where T_a is measured.</para>
/// <para>
/// A MOSFET's loss grows with its temperature. With <c>k_T = 1 + a (T_j − 25 °C)</c> and <c>g = I² · R_25 · R_th</c> of one part:
/// <c>T_j = (T_a + g (1 − 25 a)) / (1 − g a)</c>; from <c>g a = 1</c> on there is no stable answer. Source: physics; the straight line is an approximation of the
/// data sheet's curve.
/// </para>
/// </remarks>
public static class JunctionHeating
{
    private const double ReferenceDegC = 25;

    /// <summary>The balance of loss and temperature.</summary>
    public abstract record Balance
    {
        private Balance()
        {
        }

        /// <summary>Loss and temperature settle in every case of the inputs.</summary>
        /// <param name="Junction">Junction temperature, in °C.</param>
        /// <param name="TemperatureFactor">On-resistance over the one at 25 °C.</param>
        /// <param name="Loss">Of the part that carries most, in watt.</param>
        public sealed record Stable(Interval Junction, Interval TemperatureFactor, Interval Loss) : Balance;

        /// <summary>Loss and temperature drive each other up without end.</summary>
        /// <param name="LoopGain"><c>g a</c>, the rise that one degree causes, in degrees.</param>
        /// <param name="AtNominal">True in the nominal case already; false only in the worst one.</param>
        public sealed record Runaway(Interval LoopGain, bool AtNominal) : Balance;
    }

    /// <summary>Junction temperature in °C from a known loss.</summary>
    /// <param name="ambient">In °C; or the case's temperature.</param>
    /// <param name="loss">Of one part, in watt.</param>
    /// <param name="thermalResistance">From there to the junction, in °C/W.</param>
    public static Reckoning<Interval> At(Interval? ambient, Interval? loss, Interval? thermalResistance) => new InputCheck()
        .Temperature("ambient_temperature", ambient)
        .NotNegative("loss", loss, Unit.Watt)
        .ThermalResistance("thermal_resistance", thermalResistance)
        .Reckon((up, _) => up(ambient!.Value) + (up(loss!.Value) * up(thermalResistance!.Value)));

    /// <summary>Junction temperature of the hottest of equal MOSFETs in parallel, with the loss that belongs to it.</summary>
    /// <param name="current">Of all parts together, in ampere rms.</param>
    /// <param name="resistanceAt25">Of one part at 25 °C, in ohm.</param>
    /// <param name="temperatureCoefficient">a, per °C, zero or above; from the data sheet.</param>
    /// <param name="parallel">Parts in parallel, 1 to 10000.</param>
    /// <param name="sharing">How evenly they share, above 0 to 1; null is taken as alike.</param>
    /// <param name="ambient">In °C.</param>
    /// <param name="thermalResistance">Of one part, in °C/W.</param>
    public static Reckoning<Balance> SelfConsistent(
        Interval? current,
        Interval? resistanceAt25,
        Interval? temperatureCoefficient,
        int parallel,
        Interval? sharing,
        Interval? ambient,
        Interval? thermalResistance) => new InputCheck()
        .NotNegative("current_rms", current, Unit.Ampere)
        .Positive("on_resistance", resistanceAt25, Unit.Ohm)
        .NotNegative("temperature_coefficient", temperatureCoefficient, Unit.PerDegreeCelsius)
        .Count("parallel", parallel)
        .Share("current_sharing", sharing ?? Interval.Exactly(1))
        .Temperature("ambient_temperature", ambient)
        .ThermalResistance("thermal_resistance", thermalResistance)
        .Require(
            () => 1 + (temperatureCoefficient!.Value.High * (Math.Min(ambient!.Value.Low, ReferenceDegC) - ReferenceDegC)) > 0,
            "temperature_coefficient",
            "so steep a line would make the resistance negative at the ambient temperature")
        .Reckon(() =>
        {
            var most = SwitchLoss.HighestCurrent(current!.Value, parallel, sharing);
            var lossAt25 = most * most * resistanceAt25!.Value;
            return Solve(lossAt25, thermalResistance!.Value, temperatureCoefficient!.Value, ambient!.Value);
        });

    private static Balance Solve(Interval lossAt25, Interval thermalResistance, Interval coefficient, Interval ambient)
    {
        var rise = lossAt25 * thermalResistance;
        var gain = rise * coefficient;
        if (gain.High >= 1)
            return new Balance.Runaway(gain, gain.Nominal >= 1);

        // Below 25 °C a steeper line means less resistance, above it more: both ends of the slope are tried, each formula rising in all else.
        return new Balance.Stable(
            OverSlopes((up, a) => Junction(up(ambient), up(rise), a)),
            OverSlopes((up, a) => Factor(Junction(up(ambient), up(rise), a), a)),
            OverSlopes((up, a) => up(lossAt25) * Factor(Junction(up(ambient), up(lossAt25) * up(thermalResistance), a), a)));

        Interval OverSlopes(Func<Spread.End, double, double> formula)
        {
            var gentle = Spread.Of((up, _) => formula(up, coefficient.Low));
            var steep = Spread.Of((up, _) => formula(up, coefficient.High));
            return Interval.Create(
                Math.Min(gentle.Low, steep.Low), formula(interval => interval.Nominal, coefficient.Nominal), Math.Max(gentle.High, steep.High));
        }
    }

    private static double Junction(double ambient, double rise, double slope) => (ambient + (rise * (1 - (ReferenceDegC * slope)))) / (1 - (rise * slope));

    private static double Factor(double junction, double slope) => 1 + (slope * (junction - ReferenceDegC));
}
