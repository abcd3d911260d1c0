using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Stress;

/// <summary>What equal MOSFETs in parallel lose while they conduct.</summary>
/// <remarks>
/// <para><c>R_eff = R_25 · k_T / n</c>, <c>P = I² · R_eff</c>, each <c>P / n</c>; the hottest part carries <c>I / (n · k_share)</c>, never more than all of I.</para>
/// <para>
/// I in ampere rms, R_25 the on-resistance of one part at 25 °C in ohm, k_T its growth with temperature, n parts. Source: physics. Conduction only: what is
/// lost in switching cannot be told from a teardown.
/// </para>
/// </remarks>
/// <param name="EffectiveResistance">Of all parts together, in ohm.</param>
/// <param name="Total">Of all parts together, in watt.</param>
/// <param name="Each">Of one part when all share alike, in watt.</param>
/// <param name="Hottest">Of the part that carries most, in watt; the same as <paramref name="Each"/> when they share alike.</param>
/// <param name="TakenAsEqual">True when several parts share the current and how evenly was not given.</param>
public sealed record SwitchLoss(Interval EffectiveResistance, Interval Total, Interval Each, Interval Hottest, bool TakenAsEqual)
{
    /// <summary>Computes the losses.</summary>
    /// <param name="current">Of all parts together, in ampere rms.</param>
    /// <param name="resistanceAt25">Of one part at 25 °C, in ohm.</param>
    /// <param name="temperatureFactor">From the data sheet's curve; never assumed.</param>
    /// <param name="parallel">Parts in parallel, 1 to 10000.</param>
    /// <param name="sharing">How evenly they share, above 0 to 1; null is taken as alike and said.</param>
    public static Reckoning<SwitchLoss> Of(Interval? current, Interval? resistanceAt25, Interval? temperatureFactor, int parallel, Interval? sharing = null) => new InputCheck()
        .NotNegative("current_rms", current, Unit.Ampere)
        .Positive("on_resistance", resistanceAt25, Unit.Ohm)
        .Positive("temperature_factor", temperatureFactor, Unit.Ratio)
        .Count("parallel", parallel)
        .Share("current_sharing", sharing ?? Interval.Exactly(1))
        .Reckon(() =>
        {
            var (i, hot, n) = (current!.Value, resistanceAt25!.Value * temperatureFactor!.Value, Interval.Exactly(parallel));
            var effective = hot / n;
            var total = i * i * effective;
            var most = HighestCurrent(i, parallel, sharing);
            return new SwitchLoss(effective, total, total / n, parallel == 1 || sharing is null ? total / n : most * most * hot, parallel > 1 && sharing is null);
        });

    /// <summary>The current of the part that carries most, in the unit of the whole.</summary>
    internal static Interval HighestCurrent(Interval current, int parallel, Interval? sharing)
    {
        var share = sharing ?? Interval.Exactly(1);
        return Spread.Of((up, down) => up(current) / Math.Max(1, parallel * down(share)));
    }
}
