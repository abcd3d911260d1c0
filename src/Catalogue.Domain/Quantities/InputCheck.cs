namespace Catalogue.Domain.Quantities;

/// <summary>
/// Holds inputs against what can be in a power product at all, before anything is computed with them. Within these ranges no formula of this
/// program overflows.
/// </summary>
internal sealed class InputCheck
{
    private const double HighestCount = 10_000;
    private const double AbsoluteZeroDegC = -273.15;
    private const double HottestDegC = 3000;

    private readonly List<RefusedInput> _refusals = [];

    /// <summary>Above zero and of a size that occurs.</summary>
    public InputCheck Positive(string input, Interval? value, Unit unit) =>
        Within(input, value, Smallest(unit), Largest(unit), unit, $"above zero and at most {QuantityText.Of(Largest(unit), unit)}");

    /// <summary>Zero, or above zero and of a size that occurs.</summary>
    public InputCheck NotNegative(string input, Interval? value, Unit unit) =>
        Within(input, value, 0, Largest(unit), unit, $"from zero to {QuantityText.Of(Largest(unit), unit)}");

    /// <summary>A share of a whole: above 0 and at most 1.</summary>
    public InputCheck Share(string input, Interval? value) => Share(input, value, 1);

    /// <summary>A share of a whole: above 0 and at most the limit.</summary>
    public InputCheck Share(string input, Interval? value, double limit) =>
        Within(input, value, Smallest(Unit.Ratio), limit, Unit.Ratio, $"above 0 and at most {QuantityText.Number(limit)}");

    /// <summary>A temperature, in °C.</summary>
    public InputCheck Temperature(string input, Interval? value) => Within(
        input,
        value,
        AbsoluteZeroDegC,
        HottestDegC,
        Unit.DegreeCelsius,
        $"between {QuantityText.Of(AbsoluteZeroDegC, Unit.DegreeCelsius, 5)} and {QuantityText.Of(HottestDegC, Unit.DegreeCelsius)}");

    /// <summary>A thermal resistance in °C/W, zero allowed.</summary>
    public InputCheck ThermalResistance(string input, Interval? value) =>
        Within(input, value, 0, Largest(Unit.DegreeCelsiusPerWatt), Unit.DegreeCelsiusPerWatt, "from zero to 1 million °C/W");

    /// <summary>A count of parts: 1 to 10000.</summary>
    public InputCheck Count(string input, int value) =>
        Require(value is >= 1 and <= (int)HighestCount, input, $"{Words(input)} is {QuantityText.Number(value, 10)}; it must be 1 to {QuantityText.Number(HighestCount, 5)}");

    /// <summary>A condition between inputs; skipped where they were already refused.</summary>
    public InputCheck Require(Func<bool> holds, string input, string reason) => _refusals.Count > 0 ? this : Require(holds(), input, reason);

    /// <summary>Computes when nothing was refused.</summary>
    public Reckoning<T> Reckon<T>(Func<T> compute) => _refusals.Count > 0 ? new Reckoning<T>.Refused(_refusals) : new Reckoning<T>.Done(compute());

    /// <summary>Goes on to a sum that may refuse itself, when nothing was refused.</summary>
    public Reckoning<T> Try<T>(Func<Reckoning<T>> compute) => _refusals.Count > 0 ? new Reckoning<T>.Refused(_refusals) : compute();

    /// <summary>Computes a spread when nothing was refused.</summary>
    public Reckoning<Interval> Reckon(Func<Spread.End, Spread.End, double> formula) => Reckon(() => Spread.Of(formula));

    private InputCheck Within(string input, Interval? value, double low, double high, Unit unit, string range)
    {
        if (value is not { } known)
            return Require(false, input, $"{Words(input)} is not known");
        var culprit = known.Low < low ? known.Low : known.High;
        var size = Math.Abs(culprit) is 0 or (> 1e-15 and < 1e15) ? QuantityText.Of(culprit, unit) : "of an impossible size";
        return Require(known.Low >= low && known.High <= high, input, $"{Words(input)} is {size}; it must be {range}");
    }

    private InputCheck Require(bool holds, string input, string reason)
    {
        if (!holds)
            _refusals.Add(new RefusedInput(input, reason));
        return this;
    }

    private static string Words(string input) => input.Replace('_', ' ');

    private static double Smallest(Unit unit) => unit switch
    {
        Unit.Farad or Unit.Second => 1e-15,
        Unit.Ratio => 1e-6,
        _ => 1e-9,
    };

    private static double Largest(Unit unit) => unit switch
    {
        Unit.Ohm or Unit.Second => 1e12,
        Unit.Watt or Unit.WattHour => 1e9,
        Unit.Metre => 1,
        Unit.PerDegreeCelsius => 1,
        _ => 1e6,
    };
}
