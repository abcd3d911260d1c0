using System.Runtime.CompilerServices;
using System.Text;

namespace Catalogue.Domain.BenchLogs;

/// <summary>Reads the number in a cell, straight from its bytes; most cells take one pass and no allocation.</summary>
internal static class LogNumber
{
    /// <summary>No bench reading is larger, and sums of what is not larger stay far from infinity.</summary>
    public const double Largest = 1e15;

    // Instruments that follow SCPI (1999, 7.2.1.4) send 9.9E37 for infinity and 9.91E37 for not a number.
    private const double ScpiInfinity = 9.9e37;
    private const double ScpiNotANumber = 9.91e37;

    private const int LongestNumber = 64;

    private static readonly double[] Powers =
    [
        1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22,
    ];

    /// <summary>Reads a cell without blanks around it. The unit is what follows the number, mostly nothing.</summary>
    public static LogCellKind Read(ReadOnlySpan<byte> cell, byte decimalMark, out double value, out ReadOnlySpan<byte> unit)
    {
        unit = default;
        if (TryPlain(cell, decimalMark, out value, out var used) && used == cell.Length)
            return LogCellKind.Number;
        return ReadOdd(cell, decimalMark, out value, out unit);
    }

    /// <summary>True when the cell starts with a number in plain spelling; <paramref name="used"/> says how far it goes.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool TryPlain(ReadOnlySpan<byte> cell, byte decimalMark, out double value, out int used)
    {
        value = 0;
        used = 0;
        var at = 0;
        var negative = false;
        if (cell.Length > 0 && cell[0] is (byte)'-' or (byte)'+')
        {
            negative = cell[0] == '-';
            at = 1;
        }

        ulong mantissa = 0;
        int digits = 0, scale = 0;
        var afterMark = false;
        var any = false;
        for (; at < cell.Length; at++)
        {
            var digit = (uint)(cell[at] - '0');
            if (digit <= 9)
            {
                any = true;
                if (digits < 18)
                {
                    mantissa = (mantissa * 10) + digit;
                    digits += mantissa == 0 ? 0 : 1;
                    scale -= afterMark ? 1 : 0;
                }
                else if (!afterMark)
                {
                    scale++;
                }
            }
            else if (cell[at] == decimalMark && !afterMark)
            {
                afterMark = true;
            }
            else
            {
                break;
            }
        }

        if (!any)
            return false;
        if (at + 1 < cell.Length && (cell[at] | 0x20) == 'e')
            at = Exponent(cell, at, ref scale);
        value = Scale(mantissa, scale);
        value = negative ? 0 - value : value;
        used = at;
        return Math.Abs(value) <= Largest;
    }

    private static int Exponent(ReadOnlySpan<byte> cell, int at, ref int scale)
    {
        var start = at;
        at++;
        var negative = cell[at] == '-';
        at += cell[at] is (byte)'-' or (byte)'+' ? 1 : 0;
        var exponent = 0;
        var first = at;
        for (; at < cell.Length && (uint)(cell[at] - '0') <= 9; at++)
            exponent = Math.Min((exponent * 10) + cell[at] - '0', 100_000);
        if (at == first)
            return start;
        scale += negative ? -exponent : exponent;
        return at;
    }

    // Exact where mantissa and power both are exact doubles, and within a few units of the last place elsewhere.
    private static double Scale(ulong mantissa, int scale) => scale switch
    {
        0 => mantissa,
        < 0 and >= -22 => mantissa / Powers[-scale],
        > 0 and <= 22 => mantissa * Powers[scale],
        _ => mantissa == 0 ? 0 : mantissa * Math.Pow(10, scale),
    };

    private static LogCellKind ReadOdd(ReadOnlySpan<byte> cell, byte decimalMark, out double value, out ReadOnlySpan<byte> unit)
    {
        value = 0;
        unit = default;
        if (cell.IsEmpty)
            return LogCellKind.Empty;
        if (cell.Length > LongestNumber)
            return LogCellKind.Words;
        if (Grouped(cell, decimalMark, out value))
            return LogCellKind.Number;
        if (Word(cell) is { } word)
            return word;
        TryPlain(cell, decimalMark, out value, out var used);
        if (used == cell.Length)
            return Sentinel(value);
        if (used > 0 && LooksLikeUnit(cell[used..]))
        {
            unit = cell[used..].Trim((byte)' ');
            return Sentinel(value);
        }

        // A word such as VOLT:DC before the number.
        var at = cell.LastIndexOfAny((byte)' ', (byte)':', (byte)'=');
        if (at > 0 && IsFunctionWord(cell[..at]) && Plain(cell[(at + 1)..], decimalMark, out value))
            return Sentinel(value);
        value = 0;
        return LogCellKind.Words;
    }

    private static bool IsFunctionWord(ReadOnlySpan<byte> text)
    {
        foreach (var word in (ReadOnlySpan<string>)["VOLT", "CURR", "POW", "RES", "TEMP", "AMP", "DC", "AC", "MEAS"])
            if (text.Length >= word.Length && Ascii.EqualsIgnoreCase(text[..word.Length], word))
                return true;
        return false;
    }

    private static bool Plain(ReadOnlySpan<byte> text, byte decimalMark, out double value)
    {
        TryPlain(text, decimalMark, out value, out var used);
        return used > 0 && used == text.Length;
    }

    private static LogCellKind Sentinel(double value) => Math.Abs(value) switch
    {
        <= Largest => LogCellKind.Number,
        > ScpiInfinity * 0.999 and < ScpiInfinity * 1.0005 => LogCellKind.Overload,
        > ScpiNotANumber * 0.9995 and < ScpiNotANumber * 1.0005 => LogCellKind.NotANumber,
        _ => LogCellKind.Words,
    };

    private static bool LooksLikeUnit(ReadOnlySpan<byte> tail)
    {
        tail = tail.TrimStart((byte)' ');
        return tail.Length is > 0 and <= 12 && (char.IsAsciiLetter((char)tail[0]) || tail[0] is (byte)'%' or >= 0x80) && !tail.ContainsAnyInRange((byte)'0', (byte)'9');
    }

    /// <summary>Numbers with points, commas, blanks or apostrophes between thousands, such as 1.204,5.</summary>
    private static bool Grouped(ReadOnlySpan<byte> cell, byte decimalMark, out double value)
    {
        value = 0;
        var mark = cell.IndexOf(decimalMark);
        var whole = mark < 0 ? cell : cell[..mark];
        Span<byte> plain = stackalloc byte[LongestNumber];
        var length = 0;
        byte separator = 0;
        var sinceSeparator = 0;
        for (var i = 0; i < whole.Length; i++)
        {
            var letter = whole[i];
            if (char.IsAsciiDigit((char)letter) || (i == 0 && letter is (byte)'-' or (byte)'+'))
            {
                plain[length++] = letter;
                sinceSeparator += char.IsAsciiDigit((char)letter) ? 1 : 0;
                continue;
            }

            if (letter is not ((byte)'.' or (byte)',' or (byte)' ' or (byte)'\'') || (separator != 0 && letter != separator)
                || (separator == 0 ? sinceSeparator is 0 or > 3 : sinceSeparator != 3))
                return false;
            (separator, sinceSeparator) = (letter, 0);
        }

        if (separator == 0 || sinceSeparator != 3)
            return false;
        var rest = cell[whole.Length..];
        rest.CopyTo(plain[length..]);
        return TryPlain(plain[..(length + rest.Length)], decimalMark, out value, out var used) && used == length + rest.Length;
    }

    private static LogCellKind? Word(ReadOnlySpan<byte> cell)
    {
        var bare = cell.TrimStart("+-"u8);
        if (bare.IsEmpty)
            return LogCellKind.NotANumber;
        if (bare.Length > 12)
            return null;
        foreach (var word in (ReadOnlySpan<string>)["OL", "O.L", "0L", ".OL", "OVLD", "OVL", "OFL", "OVER", "OVERLOAD", "OVERFLOW", "OVERRANGE", "INF", "INFINITY", "OVERVOLT"])
            if (Ascii.EqualsIgnoreCase(bare, word))
                return LogCellKind.Overload;
        foreach (var word in (ReadOnlySpan<string>)["NAN", "1.#QNAN", "1.#IND", "NA", "N/A", "#N/A", "NULL", "NONE", "#VALUE!", "#DIV/0!", "ERR", "ERROR"])
            if (Ascii.EqualsIgnoreCase(bare, word))
                return LogCellKind.NotANumber;
        return null;
    }
}
