using System.Globalization;
using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Codes;

/// <summary>Codes on coils: digits in microhenries, R as their decimal mark, N as the one of nanohenries, and a tolerance letter.</summary>
/// <remarks><c>R68N</c> is 0.68 µH ± 30 %, so R is tried before N. Source: trade usage after IEC 60062; N as a mark is of medium confidence.</remarks>
public static class InductorCode
{
    private const int Microhenry = -6;
    private const int Nanohenry = -9;

    /// <summary>All readings of a marking, surest first; empty where it is no such code.</summary>
    /// <param name="text">The marking alone, without blanks; letters are capitals.</param>
    public static IReadOnlyList<CodeReading> Decode(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (text.Length is < 2 or > 8)
            return [];
        if (text.Length is 3 or 4 && text.AsSpan(0, 3).IndexOfAnyExceptInRange('0', '9') < 0)
        {
            var code = new DecimalNumber((ulong)(((text[0] - '0') * 10) + text[1] - '0'), Microhenry + text[2] - '0');
            if (code.Digits == 0)
                return [];
            if (text.Length == 3)
                return [CodeReading.Of(CodeScheme.ThreeDigit, code, Unit.Henry, Certainty.High, text)];
            if (!IsTolerance(text[3]) || CodeReading.Of(CodeScheme.ThreeDigit, code, Unit.Henry, text[3], Certainty.High, text) is not { } marked)
                return [];
            return text[3] == 'N'
                ? [marked, CodeReading.Of(CodeScheme.LetterNumber, new DecimalNumber(ulong.Parse(text[..3], CultureInfo.InvariantCulture), Nanohenry), Unit.Henry, Certainty.Medium, text, "N as nanohenries")]
                : [marked];
        }

        var isMicro = text.Contains('R', StringComparison.Ordinal);
        var mark = text.IndexOf(isMicro ? 'R' : 'N', StringComparison.Ordinal);
        if (mark < 0)
            return [];
        var hasLetter = mark != text.Length - 1 && !char.IsAsciiDigit(text[^1]);
        var digits = text[..^(hasLetter ? 1 : 0)].Remove(mark, 1);
        if (!ulong.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out var number))
            return [];
        var value = new DecimalNumber(number, (isMicro ? Microhenry : Nanohenry) - (digits.Length - mark));
        var confidence = isMicro ? Certainty.High : Certainty.Medium;
        var reading = !hasLetter
            ? CodeReading.Of(CodeScheme.LetterNumber, value, Unit.Henry, confidence, text)
            : IsTolerance(text[^1]) ? CodeReading.Of(CodeScheme.LetterNumber, value, Unit.Henry, text[^1], confidence, text) : null;
        return reading is null ? [] : [reading];
    }

    private static bool IsTolerance(char letter) => letter is 'F' or 'G' or 'H' or 'J' or 'K' or 'M' or 'N';
}
