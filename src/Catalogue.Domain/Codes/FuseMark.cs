using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Codes;

/// <summary>What is stamped on a miniature fuse: characteristic, current, breaking class, voltage, such as <c>T3.15AL250V</c>.</summary>
/// <remarks>
/// Characteristic FF, F, M, T, TT: very quick, quick, medium, time-lag, long time-lag. Breaking class L low, E enhanced, H high. Blanks do not
/// count. What is not marked is null: no class is assumed. Source: IEC 60127.
/// </remarks>
/// <param name="Characteristic"><c>FF</c>, <c>F</c>, <c>M</c>, <c>T</c> or <c>TT</c>; null where not marked.</param>
/// <param name="RatedCurrent">In ampere, above zero.</param>
/// <param name="BreakingClass"><c>L</c>, <c>E</c> or <c>H</c>; null where not marked.</param>
/// <param name="RatedVoltage">In volt; null where not marked.</param>
/// <param name="Used">The characters that were read.</param>
public sealed record FuseMark(string? Characteristic, Quantity RatedCurrent, char? BreakingClass, Quantity? RatedVoltage, string Used)
{
    private const int MaxLength = 40;

    /// <summary>The mark, or null where the text is none.</summary>
    public static FuseMark? Decode(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return DecodeStart(text) is { } mark && text.AsSpan(mark.Used.Length).Trim().IsEmpty ? mark : null;
    }

    /// <summary>The mark at the beginning of a text, or null.</summary>
    internal static FuseMark? DecodeStart(ReadOnlySpan<char> text)
    {
        if (text.Length > MaxLength)
            text = text[..MaxLength];
        var at = 0;
        var characteristic = text switch
        {
            ['F', 'F', ..] => "FF",
            ['T', 'T', ..] => "TT",
            ['F' or 'M' or 'T', ..] => text[0].ToString(),
            _ => null,
        };
        at += characteristic?.Length ?? 0;
        if (Number(text, ref at) is not { } current)
            return null;
        Blanks(text, ref at);
        if (at < text.Length && text[at] is 'm' && at + 1 < text.Length && text[at + 1] == 'A')
        {
            current = current.Shift(-3);
            at++;
        }

        if (at >= text.Length || text[at] != 'A' || current.Digits == 0)
            return null;
        var end = ++at;
        Blanks(text, ref at);
        char? breaking = at < text.Length && text[at] is 'L' or 'E' or 'H' && !IsWord(text, at + 1) ? text[at] : null;
        if (breaking is not null)
            end = ++at;
        var beforeVoltage = end;
        Quantity? voltage = null;
        if (Number(text, ref at) is { } volts)
        {
            Blanks(text, ref at);
            if (at < text.Length && text[at] is 'V' or 'v')
            {
                at++;
                var isAlternating = text[at..].StartsWith("AC", StringComparison.OrdinalIgnoreCase);
                var isDirect = text[at..].StartsWith("DC", StringComparison.OrdinalIgnoreCase);
                at += isAlternating || isDirect ? 2 : 0;
                if (at < text.Length && text[at] == '~')
                {
                    isAlternating = true;
                    at++;
                }

                voltage = Quantity.Exactly(volts.ToDouble(), Unit.Volt) with { Current = isAlternating ? CurrentKind.Alternating : isDirect ? CurrentKind.Direct : CurrentKind.NotSaid };
                end = at;
            }
        }

        if (IsWord(text, end))
            return null;
        // A letter and a current alone might be anything; a class or a voltage makes it a mark.
        return characteristic is null && breaking is null && end == beforeVoltage && voltage is null
            ? null
            : new FuseMark(characteristic, Quantity.Exactly(current.ToDouble(), Unit.Ampere), breaking, voltage, text[..end].ToString());
    }

    private static bool IsWord(ReadOnlySpan<char> text, int at) => at < text.Length && char.IsLetter(text[at]);

    private static void Blanks(ReadOnlySpan<char> text, ref int at)
    {
        while (at < text.Length && text[at] is ' ' or '\u00A0')
            at++;
    }

    private static DecimalNumber? Number(ReadOnlySpan<char> text, ref int at)
    {
        var start = at;
        Blanks(text, ref at);
        var (digits, exponent, count, isAfterMark) = (0UL, 0, 0, false);
        for (; at < text.Length && count < 8; at++)
        {
            if (char.IsAsciiDigit(text[at]))
            {
                digits = (digits * 10) + (ulong)(text[at] - '0');
                exponent -= isAfterMark ? 1 : 0;
                count++;
            }
            else if (text[at] is '.' or ',' && !isAfterMark && count > 0 && at + 1 < text.Length && char.IsAsciiDigit(text[at + 1]))
            {
                isAfterMark = true;
            }
            else
            {
                break;
            }
        }

        if (count > 0)
            return new DecimalNumber(digits, exponent);
        at = start;
        return null;
    }
}
