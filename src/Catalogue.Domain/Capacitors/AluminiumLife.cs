using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Capacitors;

/// <summary>How long an aluminium electrolytic capacitor may last: twice as long for each 10 °C below its rating.</summary>
/// <remarks>
/// <c>L = L_0 · 2^((T_rated − T_actual) / 10 °C)</c>; T_actual includes the heating by ripple current. Source: the trade's rule of ten degrees, not a clause of a
/// standard; makers limit it to some years. Not for polymer parts.
/// </remarks>
public static class AluminiumLife
{
    /// <summary>How well the rule is founded.</summary>
    public const Confidence Mark = Confidence.Medium;

    private const double HighestSpanDegC = 300;

    /// <summary>Computes the life, in second.</summary>
    /// <param name="ratedLife">At the rated temperature, in second.</param>
    /// <param name="ratedTemperature">In °C.</param>
    /// <param name="actualTemperature">Of the part's core, in °C.</param>
    public static Reckoning<Interval> Of(Interval? ratedLife, Interval? ratedTemperature, Interval? actualTemperature) => new InputCheck()
        .Positive("rated_life", ratedLife, Unit.Second)
        .Temperature("rated_temperature", ratedTemperature)
        .Temperature("actual_temperature", actualTemperature)
        .Require(
            () => Math.Max(Math.Abs(ratedTemperature!.Value.High - actualTemperature!.Value.Low), Math.Abs(ratedTemperature.Value.Low - actualTemperature.Value.High)) <= HighestSpanDegC,
            "actual_temperature",
            "the rule does not reach over more than 300 °C")
        .Reckon((up, down) => up(ratedLife!.Value) * Math.Pow(2, (up(ratedTemperature!.Value) - down(actualTemperature!.Value)) / 10));
}
