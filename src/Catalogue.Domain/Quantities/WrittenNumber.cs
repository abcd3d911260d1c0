namespace Catalogue.Domain.Quantities;

/// <summary>A number as it stands in a text, before its unit is known.</summary>
internal readonly record struct WrittenNumber
{
    /// <summary>Its digits and power of ten; a mark in doubt is taken as decimal mark.</summary>
    public DecimalNumber Value { get; init; }

    /// <summary>True for plain digits without any mark or exponent.</summary>
    public bool IsWhole { get; init; }

    /// <summary>True where its only mark stands before exactly three digits, so that it may group thousands.</summary>
    public bool IsMarkInDoubt { get; init; }

    /// <summary>True for digits, a capital E and digits: an exponent, or the old ohm sign at the decimal mark.</summary>
    public bool IsOldOhm { get; init; }

    /// <summary>The value with E as the decimal mark of ohms.</summary>
    public DecimalNumber OldOhm { get; init; }

    /// <summary>True where it has more digits than a number of ours holds.</summary>
    public bool IsTooLong { get; init; }

    /// <summary>Index behind its last character.</summary>
    public int End { get; init; }

    private const int MaxDigits = 19;

    /// <summary>Reads a number without sign: groups of thousands, either decimal mark, vulgar fractions, an exponent.</summary>
    /// <param name="text">Folded.</param>
    /// <param name="start">Where it begins.</param>
    /// <param name="number">What was read.</param>
    /// <returns>False where no number begins there, or where its marks make none (<c>1.2.3</c>).</returns>
    public static bool TryRead(ReadOnlySpan<char> text, int start, out WrittenNumber number)
    {
        number = default;
        var at = start;
        var (digits, significant, run, before) = (0UL, 0, 0, -1);
        var (points, commas, blanks, last, leadingZero) = (0, 0, 0, ' ', at < text.Length && text[at] == '0');
        var (isGrouped, isTooLong, droppedZeros) = (true, false, 0);
        for (; at < text.Length; at++)
        {
            var c = text[at];
            if (char.IsAsciiDigit(c))
            {
                run++;
                if (significant == 0 && c == '0')
                    continue;
                if (++significant <= MaxDigits)
                    digits = (digits * 10) + (ulong)(c - '0');
                else if (c == '0' && points + commas == 0)
                    droppedZeros++;
                else
                    isTooLong = true;
                continue;
            }

            var isMark = c is '.' or ',';
            if (!isMark && !(c is ' ' or '\'' && run is > 0 and <= 3 && points + commas == 0 && IsGroup(text, at + 1) && (blanks == 0 || (run == 3 && c == last))))
                break;
            if (at + 1 >= text.Length || !char.IsAsciiDigit(text[at + 1]))
                break;
            // Whatever stands before the second mark has to be a group of three.
            if (before >= 0 && run != 3)
                isGrouped = false;
            before = before < 0 ? run : before;
            (last, run) = (c, 0);
            if (isMark)
                _ = c == '.' ? points++ : commas++;
            else
                blanks++;
        }

        var marks = points + commas;
        if (run == 0 && marks == 0)
            return VulgarOnly(text, start, out number);
        if ((marks > 0 || blanks > 0) && (before == 0 && marks > 1 || !isGrouped))
            return false;
        // The decimal mark is the last one and of its own kind; before it only groups of three.
        var isDecimal = marks == 1 || (marks > 1 && (last == '.' ? points : commas) == 1);
        if (marks > 1 && (isDecimal ? (before is 0 or > 3) : run != 3 || before > 3))
            return false;
        var decimals = isDecimal ? run : 0;
        var value = new DecimalNumber(digits, droppedZeros - decimals);
        var isWhole = marks == 0;
        if (isWhole && blanks == 0 && at < text.Length && Vulgar(text[at]) is { } share)
        {
            if (digits > 1_000_000)
                return false;
            value = new DecimalNumber((digits * 1000) + share, -3);
            (at, isWhole) = (at + 1, false);
        }

        number = new WrittenNumber
        {
            Value = value,
            IsWhole = isWhole,
            IsMarkInDoubt = marks == 1 && blanks == 0 && run == 3 && before is >= 1 and <= 3 && !leadingZero,
            IsTooLong = isTooLong,
            End = at,
        };
        number = WithExponent(text, number, digits);
        return true;
    }

    private static WrittenNumber WithExponent(ReadOnlySpan<char> text, WrittenNumber number, ulong whole)
    {
        var at = number.End;
        if (at + 1 >= text.Length || text[at] is not ('e' or 'E'))
            return number;
        var sign = text[at + 1] is '-' ? -1 : 1;
        var first = at + (text[at + 1] is '-' or '+' ? 2 : 1);
        var (end, exponent) = (first, 0);
        for (; end < text.Length && char.IsAsciiDigit(text[end]); end++)
            exponent = Math.Min((exponent * 10) + text[end] - '0', 99_999);
        if (end == first)
            return number;
        var isOldOhm = number.IsWhole && text[at] == 'E' && first == at + 1 && end - first <= 6 && number.Value.Exponent == 0 && whole < 1_000_000_000;
        var after = whole;
        for (var i = first; isOldOhm && i < end; i++)
            after = (after * 10) + (ulong)(text[i] - '0');
        return number with
        {
            Value = number.Value.Shift(sign * exponent),
            IsWhole = false,
            IsMarkInDoubt = false,
            IsOldOhm = isOldOhm,
            OldOhm = new DecimalNumber(after, first - end),
            End = end,
        };
    }

    private static bool IsGroup(ReadOnlySpan<char> text, int at) =>
        at + 3 <= text.Length && char.IsAsciiDigit(text[at]) && char.IsAsciiDigit(text[at + 1]) && char.IsAsciiDigit(text[at + 2]) && (at + 3 == text.Length || !char.IsAsciiDigit(text[at + 3]));

    private static bool VulgarOnly(ReadOnlySpan<char> text, int start, out WrittenNumber number)
    {
        number = default;
        if (start >= text.Length || Vulgar(text[start]) is not { } share)
            return false;
        number = new WrittenNumber { Value = new DecimalNumber(share, -3), End = start + 1 };
        return true;
    }

    // In thousandths; a third is none of these and is left unread.
    private static ulong? Vulgar(char c) => c switch
    {
        '½' => 500,
        '¼' => 250,
        '¾' => 750,
        '⅛' => 125,
        '⅜' => 375,
        '⅝' => 625,
        '⅞' => 875,
        '⅕' => 200,
        '⅖' => 400,
        '⅗' => 600,
        '⅘' => 800,
        _ => null,
    };
}
