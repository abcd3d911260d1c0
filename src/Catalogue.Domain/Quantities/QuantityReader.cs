using System.Globalization;
using System.Text;

namespace Catalogue.Domain.Quantities;

/// <summary>
/// Reads one number with its unit as people type it: <c>35 A</c>, <c>500mA</c>, <c>3,15 A</c>, <c>2.9mΩ</c>, <c>1.2 kWh</c>.
/// A point or comma that could be a decimal mark or a group of thousands is not decided but handed back with both readings.
/// </summary>
public static class QuantityReader
{
    /// <summary>Longer texts are no quantity.</summary>
    public const int MaxLength = 64;

    /// <summary>Reads a text; a unit is required unless <paramref name="assumed"/> names one.</summary>
    /// <param name="text">As typed; full-width forms and no-break spaces are folded first.</param>
    /// <param name="assumed">The unit to take when the text has none, or null to refuse it.</param>
    public static QuantityReading Read(string? text, Unit? assumed = null)
    {
        if (string.IsNullOrWhiteSpace(text))
            return new QuantityReading.Refused("Nothing was given; a number and a unit are needed, such as 35 A.");
        if (text.Length > MaxLength)
            return new QuantityReading.Refused($"A quantity has at most {MaxLength} characters.");
        if (!IsWellFormed(text))
            return new QuantityReading.Refused("The text holds broken characters.");

        var folded = text.Normalize(NormalizationForm.FormKC).Replace('\u2212', '-').Trim();
        var end = 0;
        while (end < folded.Length && (char.IsAsciiDigit(folded[end]) || folded[end] is '.' or ',' or '-' or '+'))
            end++;
        var digits = folded[..end];
        var unitText = folded[end..].Trim();

        var marks = digits.Count(c => c is '.' or ',');
        if (digits.Length == 0 || !digits.Any(char.IsAsciiDigit) || digits.LastIndexOfAny(['-', '+']) > 0 || marks > 1)
            return new QuantityReading.Refused($"“{text}” does not begin with one plain number, such as 3.15 A.");

        if (Scale(unitText) is not { } found)
        {
            if (unitText.Length > 0)
                return new QuantityReading.Refused($"“{unitText}” is no unit known here; known are {string.Join(", ", UnitSymbols.Codes)}, with p n µ m k M G before them.");
            if (assumed is not { } unit)
                return new QuantityReading.Refused($"“{text}” has no unit; write it, such as {digits} A.");
            found = (1, unit);
        }

        var point = digits.Replace(',', '.');
        if (!double.TryParse(point, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) || !double.IsFinite(value * found.Factor))
            return new QuantityReading.Refused($"“{digits}” is no number.");
        if (IsGroupOrDecimal(digits))
        {
            var whole = digits.Replace(",", "", StringComparison.Ordinal).Replace(".", "", StringComparison.Ordinal);
            return new QuantityReading.Ambiguous([$"{point} {unitText}".Trim(), $"{whole} {unitText}".Trim()]);
        }

        return new QuantityReading.Read(value * found.Factor, found.Unit);
    }

    // 1.000 or 20,000: three digits after the only mark, one to three before, the first of them not zero.
    private static bool IsGroupOrDecimal(string digits)
    {
        var mark = digits.IndexOfAny(['.', ',']);
        if (mark < 0)
            return false;
        var before = digits[..mark].TrimStart('-', '+');
        return before.Length is >= 1 and <= 3 && before[0] != '0' && digits.Length - mark - 1 == 3;
    }

    private static (double Factor, Unit Unit)? Scale(string text)
    {
        if (text.Length == 0)
            return null;
        if (text == "%")
            return (0.01, Unit.Ratio);
        if (UnitSymbols.Find(text) is { } plain)
            return (1, plain);
        var factor = text[0] switch
        {
            'p' => 1e-12,
            'n' => 1e-9,
            'μ' or 'u' => 1e-6,
            'm' => 1e-3,
            'k' or 'K' => 1e3,
            'M' => 1e6,
            'G' => 1e9,
            _ => 0,
        };
        return factor != 0 && UnitSymbols.Find(text[1..]) is { } unit and not (Unit.DegreeCelsius or Unit.Ratio or Unit.Kilogram or Unit.PerDegreeCelsius or Unit.DegreeCelsiusPerWatt)
            ? (factor, unit)
            : null;
    }

    private static bool IsWellFormed(string text)
    {
        for (var i = 0; i < text.Length; i++)
        {
            if (!char.IsSurrogate(text[i]))
                continue;
            if (i + 1 >= text.Length || !char.IsSurrogatePair(text[i], text[i + 1]))
                return false;
            i++;
        }

        return true;
    }
}
