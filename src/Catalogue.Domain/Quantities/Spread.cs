namespace Catalogue.Domain.Quantities;

/// <summary>Carries the spread of inputs through a formula.</summary>
public static class Spread
{
    /// <summary>The end of an interval that makes the result lowest, nominal or highest.</summary>
    /// <param name="input">An input of the formula.</param>
    public delegate double End(Interval input);

    /// <summary>
    /// The interval of a formula that rises or falls with each of its inputs all the way. It holds every result that inputs within their intervals
    /// can give.
    /// </summary>
    /// <param name="formula">
    /// Takes two ends: the first for inputs with which the result rises, the second for those with which it falls. Evaluated three times.
    /// </param>
    /// <exception cref="ArgumentOutOfRangeException">A result is not finite.</exception>
    public static Interval Of(Func<End, End, double> formula)
    {
        ArgumentNullException.ThrowIfNull(formula);
        var nominal = formula(Nominal, Nominal);
        // Functions such as the logarithm are monotonic only to their last digit.
        return Interval.Create(Math.Min(formula(Low, High), nominal), nominal, Math.Max(formula(High, Low), nominal));
    }

    private static double Low(Interval input) => input.Low;

    private static double Nominal(Interval input) => input.Nominal;

    private static double High(Interval input) => input.High;
}
