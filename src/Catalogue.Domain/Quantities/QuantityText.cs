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
    private const double SecondsInAnHour = 3600;

    /// <summary>Such as <c>4.7 kΩ</c>, <c>35 A</c>, <c>25 °C</c> or, for a ratio, <c>0.83</c>; a time from an hour on in hours, such as <c>2000 h</c>.</summary>
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
        if (IsInHours(value, unit))
            return Number(value / SecondsInAnHour, digits) + NoBreakSpace + "h";

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
        interval.Low == interval.High ? Of(interval.Nominal, unit, digits)
        : IsInHours(interval.Nominal, unit) ? Cases(interval, SecondsInAnHour, digits) + NoBreakSpace + "h"
        : InBaseUnit(interval, unit, digits);

    /// <summary>The same without a prefix, such as <c>0.4 V</c>: where a thousandth that is overlooked can hurt.</summary>
    public static string InBaseUnit(Interval interval, Unit unit, int digits = 4)
    {
        var values = interval.Low == interval.High ? Number(interval.Nominal, digits) : Cases(interval, 1, digits);
        return values + (unit.Sign() is { Length: > 0 } sign ? NoBreakSpace + sign : "");
    }

    /// <summary>
    /// In full: <see cref="QuantityParser"/> reads this print back to the very same double. Ratios are printed in per cent; a third decimal gets a
    /// fourth behind it, so that it is not taken for a group of thousands; beyond p and G there is an exponent.
    /// </summary>
    /// <param name="value">A finite value in the unit.</param>
    /// <param name="unit">Its unit.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static string Exact(double value, Unit unit)
    {
        if (!double.IsFinite(value))
            throw new ArgumentOutOfRangeException(nameof(value), value, "Only a finite value can be printed; unknown is said in words.");
        if (unit is Unit.Ratio)
            return Shortest(value, 2) + NoBreakSpace + "%";
        if (unit is Unit.DegreeCelsius or Unit.DegreeCelsiusPerWatt or Unit.Kilogram or Unit.Metre or Unit.PerDegreeCelsius || value == 0)
            return Shortest(value, 0) + NoBreakSpace + unit.Sign();
        var written = DecimalNumber.Of(value);
        var leading = written.Digits.ToString(CultureInfo.InvariantCulture).Length - 1 + written.Exponent;
        var step = (int)Math.Floor(leading / 3.0);
        step = unit is Unit.WattHour && Math.Abs(value) is >= 1000 and < 10_000 ? 0 : Math.Clamp(step, -PlainPrefix, Prefixes.Length - 1 - PlainPrefix);
        // A capital M before these units would be asked about: volts, farads and the like are not used in millions here.
        if (step == 2 && unit is Unit.Volt or Unit.Ampere or Unit.AmpereHour or Unit.Farad or Unit.Henry or Unit.Second)
            step = 1;
        return Shortest(value, -3 * step) + NoBreakSpace + Prefixes[step + PlainPrefix] + unit.Sign();
    }

    /// <summary>
    /// A quantity in full, read back to an equal one: <c>4.7 kΩ [4.465 kΩ … 4.935 kΩ]</c>, <c>100 V … 240 V AC</c>, <c>2 × 15 A</c>, <c>≤ 100 mW</c>.
    /// </summary>
    public static string Exact(Quantity quantity)
    {
        var count = quantity.Count > 1 ? quantity.Count.ToString(CultureInfo.InvariantCulture) + " × " : "";
        var current = quantity.Current switch { CurrentKind.Alternating => " AC", CurrentKind.Direct => " DC", _ => "" };
        return quantity switch
        {
            { Value: { } value, HasSpread: false } => $"{count}{Exact(value, quantity.Unit)}{current}",
            { Value: { } value, Low: { } low, High: { } high } => $"{count}{Exact(value, quantity.Unit)}{current} [{Exact(low, quantity.Unit)} … {Exact(high, quantity.Unit)}]",
            { Low: { } low, High: { } high } => $"{count}{Exact(low, quantity.Unit)} … {Exact(high, quantity.Unit)}{current}",
            { High: { } high } => $"≤ {Exact(high, quantity.Unit)}{current}",
            { Low: { } low } => $"≥ {Exact(low, quantity.Unit)}{current}",
            _ => throw new ArgumentException("A quantity has at least one number.", nameof(quantity)),
        };
    }

    /// <summary>A ratio with two decimals, as beside a bar.</summary>
    public static string TwoDecimals(double value) => WithMinusSign(value.ToString("0.00", CultureInfo.InvariantCulture));

    /// <summary>A bare number with so many significant digits and no trailing zeros.</summary>
    public static string Number(double value, int digits = 4)
    {
        var rounded = Round(value, digits);
        var decimals = rounded == 0 ? 0 : Math.Clamp(digits - 1 - (int)Math.Floor(Math.Log10(Math.Abs(rounded))), 0, 15);
        return WithMinusSign(rounded.ToString("0." + new string('#', decimals), CultureInfo.InvariantCulture));
    }

    private static bool IsInHours(double value, Unit unit) => unit is Unit.Second && Math.Abs(value) >= SecondsInAnHour;

    private static string Cases(Interval interval, double per, int digits) =>
        $"{Number(interval.Low / per, digits)} / {Number(interval.Nominal / per, digits)} / {Number(interval.High / per, digits)}";

    private static double Round(double value, int digits)
    {
        if (value == 0)
            return 0;
        var scale = Math.Pow(10, digits - 1 - (int)Math.Floor(Math.Log10(Math.Abs(value))));
        return double.IsFinite(scale) && scale != 0 ? Math.Round(value * scale, MidpointRounding.AwayFromZero) / scale : value;
    }

    // The shortest digits that give the double, with the point moved so many places to the right.
    private static string Shortest(double value, int places)
    {
        const int MostZeros = 6;
        const int MostWhole = 15;
        if (value == 0)
            return "0";
        var written = DecimalNumber.Of(value);
        var digits = written.Digits.ToString(CultureInfo.InvariantCulture);
        // Digits before the point.
        var whole = digits.Length + written.Exponent + places;
        string number;
        if (whole is > MostWhole or < -MostZeros)
            number = $"{digits[0]}{(digits.Length > 1 ? "." + digits[1..] : "")}e{(whole - 1).ToString(CultureInfo.InvariantCulture)}";
        else if (whole >= digits.Length)
            number = digits + new string('0', whole - digits.Length);
        else if (whole <= 0)
            number = "0." + new string('0', -whole) + digits;
        else
            number = $"{digits[..whole]}.{digits[whole..]}{(digits.Length - whole == 3 && whole <= 3 ? "0" : "")}";
        return WithMinusSign(value < 0 ? "-" + number : number);
    }

    private static string WithMinusSign(string text) => text.Replace('-', '\u2212');
}
