using System.Globalization;

namespace Catalogue.Domain.Quantities;

/// <summary>
/// The one place where a quantity becomes text for people: engineering form, a no-break space before the unit, a true minus sign.
/// </summary>
public static class QuantityText
{
    private const string NoBreakSpace = "\u00A0";
    private static readonly string[] Prefixes = ["p", "n", "µ", "m", "", "k", "M", "G"];
    private const int PlainPrefix = 4;

    /// <summary>Such as <c>4.7 kΩ</c>, <c>35 A</c>, <c>25 °C</c> or, for a ratio, <c>0.83</c>.</summary>
    /// <param name="value">A finite value in the base unit.</param>
    /// <param name="unit">Its unit.</param>
    /// <param name="digits">Significant digits, 1 to 15.</param>
    public static string Of(double value, Unit unit, int digits = 4)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(digits, 1);
        if (!double.IsFinite(value))
            throw new ArgumentOutOfRangeException(nameof(value), value, "Only a finite value can be printed; unknown is said in words.");
        var sign = unit.Sign();
        if (unit is Unit.Ratio)
            return Number(value, digits);
        if (unit is Unit.PerDegreeCelsius or Unit.DegreeCelsiusPerWatt)
            return Number(value, digits) + NoBreakSpace + sign;
        if (unit is Unit.DegreeCelsius or Unit.Kilogram or Unit.Metre || value == 0)
            return Number(value, digits) + NoBreakSpace + sign;

        var rounded = Round(value, digits);
        var step = (int)Math.Floor(Math.Log10(Math.Abs(rounded)) / 3);
        // Watt-hours and ampere-hours are written 512 Wh and 20 Ah, not 0.512 kWh; beyond four digits the prefix helps.
        if (unit is Unit.WattHour && Math.Abs(rounded) is >= 1000 and < 10_000)
            step = 0;
        step = Math.Clamp(step, -PlainPrefix, Prefixes.Length - 1 - PlainPrefix);
        return Number(value / Math.Pow(1000, step), digits) + NoBreakSpace + Prefixes[step + PlainPrefix] + sign;
    }

    /// <summary>The two ends and the middle with one unit, such as <c>20 / 25.6 / 29.2 V</c>.</summary>
    public static string Of(Interval interval, Unit unit, int digits = 4) =>
        interval.Low == interval.High
            ? Of(interval.Nominal, unit, digits)
            : $"{Number(interval.Low, digits)} / {Number(interval.Nominal, digits)} / {Number(interval.High, digits)}{(unit.Sign() is { Length: > 0 } sign ? NoBreakSpace + sign : "")}";

    /// <summary>A ratio with two decimals, as beside a bar.</summary>
    public static string TwoDecimals(double value) => WithMinusSign(value.ToString("0.00", CultureInfo.InvariantCulture));

    /// <summary>A bare number with so many significant digits and no trailing zeros.</summary>
    public static string Number(double value, int digits = 4)
    {
        var rounded = Round(value, digits);
        var decimals = rounded == 0 ? 0 : Math.Clamp(digits - 1 - (int)Math.Floor(Math.Log10(Math.Abs(rounded))), 0, 15);
        return WithMinusSign(rounded.ToString("0." + new string('#', decimals), CultureInfo.InvariantCulture));
    }

    private static double Round(double value, int digits)
    {
        if (value == 0)
            return 0;
        var scale = Math.Pow(10, digits - 1 - (int)Math.Floor(Math.Log10(Math.Abs(value))));
        return double.IsFinite(scale) && scale != 0 ? Math.Round(value * scale, MidpointRounding.AwayFromZero) / scale : value;
    }

    private static string WithMinusSign(string text) => text.Replace('-', '\u2212');
}
