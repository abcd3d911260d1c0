using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Codes;

/// <summary>Codes on capacitors: digits in picofarads with tolerance letter, and a voltage in front as digit and letter or as one letter.</summary>
/// <remarks>
/// Two digits and a power of ten; 8 as third digit means × 0.01, 9 means × 0.1. <c>R</c> is the decimal mark of a value in picofarads, on large
/// cans of one in microfarads. <c>470</c> alone is 47 pF by the code, but large parts print a plain 470: neither is preferred. Source:
/// IEC 60062 and trade usage.
/// </remarks>
public static class CapacitorCode
{
    private const int Picofarad = -12;
    private const int Microfarad = -6;

    /// <summary>All readings of a marking, surest first; empty where it is no such code.</summary>
    /// <param name="text">The marking alone, without blanks; letters are capitals.</param>
    public static IReadOnlyList<CodeReading> Decode(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (text.Length is < 3 or > LetterNumberCode.MaxLength)
            return [];
        if (text.Length >= 5 && char.IsAsciiLetterUpper(text[1]) && IsBody(text.AsSpan(2)) && CapacitorVoltage.Decode(text[..2]) is { } rated)
            return WithVoltage(text, 2, rated.Voltage, CodeScheme.VoltageAndDigits, rated.Confidence);
        if (text.Length is 4 or 5 && IsBody(text.AsSpan(1)) && CapacitorVoltage.DecodeLetter(text[0]) is { } volts)
            return WithVoltage(text, 1, volts, CodeScheme.VoltageLetterAndDigits, Certainty.Medium);
        return Body(text, text);
    }

    private static IReadOnlyList<CodeReading> WithVoltage(string text, int start, Quantity voltage, CodeScheme scheme, Certainty confidence) =>
        Body(text[start..], text) is [var first, ..]
            ? [first with { Scheme = scheme, RatedVoltage = voltage, Confidence = first.Confidence < confidence ? first.Confidence : confidence, Note = null }]
            : [];

    private static bool IsBody(ReadOnlySpan<char> text) =>
        text.Length is 3 or 4 && (char.IsAsciiDigit(text[0]) && char.IsAsciiDigit(text[1]) && char.IsAsciiDigit(text[2]) || text.Contains('R')) && (text.Length == 3 || char.IsAsciiLetterUpper(text[3]) || text.Contains('R'));

    private static IReadOnlyList<CodeReading> Body(string body, string used)
    {
        if (body.Length is 3 or 4 && char.IsAsciiDigit(body[0]) && char.IsAsciiDigit(body[1]) && char.IsAsciiDigit(body[2]))
            return Digits(body, used);
        var mark = body.IndexOf('R', StringComparison.Ordinal);
        if (mark < 0 || LetterNumberCode.Decode(body, PartKind.Resistor) is not [var inOhms])
            return [];
        // The same digits and the same letters as on a resistor, counted in picofarads.
        var hasLetter = !char.IsAsciiDigit(body[^1]) && body.Length - 1 != mark;
        var digits = body[..^(hasLetter ? 1 : 0)];
        var value = new DecimalNumber(ulong.Parse(digits.Remove(mark, 1), System.Globalization.CultureInfo.InvariantCulture), Picofarad - (digits.Length - mark - 1));
        if (hasLetter)
            return CodeReading.Of(CodeScheme.LetterNumber, value, Unit.Farad, body[^1], Certainty.High, used) is { } marked ? [marked] : [];
        return inOhms.Quantity.Value == 0
            ? []
            : [
                CodeReading.Of(CodeScheme.LetterNumber, value, Unit.Farad, Certainty.High, used, "R as the picofarad decimal mark"),
                CodeReading.Of(CodeScheme.LetterNumber, value.Shift(Microfarad - Picofarad), Unit.Farad, Certainty.Low, used, "R as the microfarad decimal mark, on large cans"),
            ];
    }

    private static IReadOnlyList<CodeReading> Digits(string body, string used)
    {
        var mantissa = (ulong)(((body[0] - '0') * 10) + body[1] - '0');
        var power = body[2] switch { '8' => -2, '9' => -1, _ => body[2] - '0' };
        var code = new DecimalNumber(mantissa, Picofarad + power);
        var plain = new DecimalNumber((mantissa * 10) + (ulong)(body[2] - '0'), Picofarad);
        if (mantissa == 0)
            return [];
        if (body.Length == 3)
        {
            // 47 pF or 470: a round number is printed both ways; 104 is hardly ever 104 pF.
            return
            [
                CodeReading.Of(CodeScheme.ThreeDigit, code, Unit.Farad, Certainty.High, used, "three-digit code, picofarads"),
                CodeReading.Of(CodeScheme.Plain, plain, Unit.Farad, body[2] == '0' ? Certainty.High : Certainty.Low, used, "plain picofarads"),
            ];
        }

        if (CodeReading.Of(CodeScheme.ThreeDigit, code, Unit.Farad, body[3], Certainty.High, used) is not { } marked)
            return [];
        return body[3] switch
        {
            'F' => [marked, CodeReading.Of(CodeScheme.Plain, plain.Shift(-Picofarad), Unit.Farad, marked.Confidence, used, "F as the unit farad")],
            'N' => [marked, CodeReading.Of(CodeScheme.Plain, plain.Shift(3), Unit.Farad, marked.Confidence, used, "N as nanofarads")],
            _ => [marked],
        };
    }
}
