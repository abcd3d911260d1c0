using System.Globalization;
using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Codes;

/// <summary>The codes on chip resistors: three and four digits, R as decimal mark, EIA-96, links, and the plain numbers they may be taken for.</summary>
/// <remarks>
/// Attempts in this order: link, R, EIA-96, four digits, three digits, plain. Multipliers of EIA-96: Z 10⁻³, Y R 10⁻², X S 10⁻¹, A 1, B H 10,
/// C 10², D 10³, E 10⁴, F 10⁵. A code of EIA-96 means E96 and ±1 %; three digits mean E24, so other digits lower the confidence. Source:
/// IEC 60062, EIA-96; what counts as equally likely is a house rule.
/// </remarks>
public static class ChipResistorCode
{
    private const int LargestUsualPower = 6;

    /// <summary>All readings of a marking, surest first; empty where it is no such code.</summary>
    /// <param name="text">The marking alone, upper case, without blanks.</param>
    public static IReadOnlyList<CodeReading> Decode(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (text.Length is 0 or > LetterNumberCode.MaxLength)
            return [];
        var readings = new List<CodeReading>(2);
        if (text.Length <= 4 && text.All(c => c == '0'))
            return [CodeReading.Of(CodeScheme.ZeroLink, default, Unit.Ohm, Certainty.High, text)];
        if (text.Contains('R', StringComparison.Ordinal) || text.Contains('E', StringComparison.Ordinal))
            readings.AddRange(LetterNumberCode.Decode(text, PartKind.Resistor));
        if (text.Length == 3 && Number(text, 0, 2) is { } index and >= 1 and <= 96 && Power96(text[2]) is { } power96)
        {
            var value = new DecimalNumber((ulong)PreferredValues.E96[index - 1], power96);
            var isSecond = readings.Count > 0 && text[2] == 'R';
            var (low, high) = value.Spread(new DecimalNumber(1, -2), new DecimalNumber(1, -2));
            readings.Add(new CodeReading(CodeScheme.Eia96, Quantity.Between(low, value.ToDouble(), high, Unit.Ohm), isSecond ? Certainty.Medium : Certainty.High, text, "±1 %"));
        }

        var letter = text.Length is 4 or 5 && text[^1] is 'B' or 'C' or 'D' or 'F' or 'G' or 'J' ? text[^1] : (char?)null;
        var length = text.Length - (letter is null ? 0 : 1);
        if (Number(text, 0, length) is { } number)
            Digits(readings, text, length, number, letter);
        return [.. readings.OrderByDescending(reading => reading.Confidence)];
    }

    private static void Digits(List<CodeReading> readings, string text, int length, int number, char? letter)
    {
        if (length is 3 or 4)
        {
            var (mantissa, power) = (number / 10, number % 10);
            var isUsual = power <= LargestUsualPower && (length == 3 ? PreferredValues.IsE24(mantissa) : PreferredValues.IsE96(mantissa) || IsRoundE24(mantissa));
            var confidence = isUsual ? Certainty.High : length == 4 && mantissa >= 100 ? Certainty.Medium : Certainty.Low;
            if (Marked(length == 3 ? CodeScheme.ThreeDigit : CodeScheme.FourDigit, new DecimalNumber((ulong)mantissa, power), confidence, letter, text) is { } code)
                readings.Add(code);
            if (letter is null && power == 0 && (length == 4 ? PreferredValues.IsE96(mantissa) || IsRoundE24(mantissa) : IsRoundE24(number)))
                readings.Add(CodeReading.Of(CodeScheme.Plain, new DecimalNumber((ulong)number, 0), Unit.Ohm, confidence, text));
            else if (letter is null && length == 3 && PreferredValues.IsE96(number))
                readings.Add(CodeReading.Of(CodeScheme.Plain, new DecimalNumber((ulong)number, 0), Unit.Ohm, isUsual ? Certainty.Low : Certainty.Medium, text));
        }
        else if (letter is null && length is 1 or 2)
        {
            readings.Add(CodeReading.Of(CodeScheme.Plain, new DecimalNumber((ulong)number, 0), Unit.Ohm, Certainty.Medium, text));
        }
    }

    private static CodeReading? Marked(CodeScheme scheme, DecimalNumber value, Certainty confidence, char? letter, string text) =>
        letter is { } tolerance ? CodeReading.Of(scheme, value, Unit.Ohm, tolerance, confidence, text) : CodeReading.Of(scheme, value, Unit.Ohm, confidence, text);

    private static bool IsRoundE24(int threeDigits) => threeDigits % 10 == 0 && PreferredValues.IsE24(threeDigits / 10);

    private static int? Power96(char letter) => letter switch
    {
        'Z' => -3,
        'Y' or 'R' => -2,
        'X' or 'S' => -1,
        'A' => 0,
        'B' or 'H' => 1,
        'C' => 2,
        'D' => 3,
        'E' => 4,
        'F' => 5,
        _ => null,
    };

    private static int? Number(string text, int start, int length) =>
        length is > 0 and < 9 && int.TryParse(text.AsSpan(start, length), NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : null;
}
