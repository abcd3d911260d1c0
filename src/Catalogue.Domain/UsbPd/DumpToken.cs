namespace Catalogue.Domain.UsbPd;

/// <summary>A run of letters and digits in a line of a pasted text.</summary>
/// <param name="Text">The run as written.</param>
/// <param name="Start">Where it begins in its line.</param>
/// <param name="Digits">Its hexadecimal digits, or null where it is no such number.</param>
/// <param name="IsMarked">True where a prefix or suffix says hexadecimal.</param>
internal sealed record DumpToken(string Text, int Start, string? Digits, bool IsMarked)
{
    // Longer runs are no word of anybody's; only bytes of a message may be long.
    private const int LongestWord = 64;

    /// <summary>Where it ends in its line.</summary>
    public int End => Start + Text.Length;

    /// <summary>Eight hexadecimal digits.</summary>
    public bool IsWord => Digits?.Length == 8;

    /// <summary>A plain decimal number of at most two digits; null else.</summary>
    public int? SmallNumber => Text.Length <= 2 && Text.All(char.IsAsciiDigit) ? int.Parse(Text, System.Globalization.CultureInfo.InvariantCulture) : null;

    /// <summary>The runs of a line, in order.</summary>
    public static List<DumpToken> Of(string line)
    {
        var tokens = new List<DumpToken>();
        for (var i = 0; i < line.Length;)
        {
            if (!char.IsLetterOrDigit(line[i]))
            {
                i++;
                continue;
            }

            var start = i;
            while (i < line.Length && (char.IsLetterOrDigit(line[i]) || line[i] == '_' || Joins(line, start, i)))
                i++;
            var isMarkedBefore = start > 0 && line[start - 1] == '$';
            var text = line[start..i];
            var digits = text.Length <= LongestWord || char.IsAsciiHexDigit(text[^1]) ? WordText.HexDigits(text, out var isMarked) : Nothing(out isMarked);
            tokens.Add(new DumpToken(text, start, digits, isMarked || isMarkedBefore));
        }

        return tokens;
    }

    /// <summary>The parts of an identifier in lower case: <c>SRC_PDO_1</c>, <c>srcPdo1</c> are src, pdo.</summary>
    public IEnumerable<string> Parts()
    {
        if (Text.Length > LongestWord)
            yield break;
        var start = -1;
        for (var i = 0; i <= Text.Length; i++)
        {
            var isLetter = i < Text.Length && char.IsLetter(Text[i]);
            if (start >= 0 && (!isLetter || (char.IsUpper(Text[i]) && char.IsLower(Text[i - 1]))))
            {
                yield return Text[start..i].ToLowerInvariant();
                start = -1;
            }

            if (isLetter && start < 0)
                start = i;
        }
    }

    private static string? Nothing(out bool isMarked)
    {
        isMarked = false;
        return null;
    }

    // A point or comma inside a decimal number, an apostrophe inside a hexadecimal one.
    private static bool Joins(string line, int start, int i)
    {
        if (i + 1 >= line.Length || i == start)
            return false;
        if (line[i] == '\'')
            return char.IsAsciiHexDigit(line[i + 1]) && line[start] == '0' && i - start > 2 && line[start + 1] is 'x' or 'X'
                || (i - start == 2 && line[start] == '3' && line[start + 1] == '2' && line[i + 1] is 'h' or 'H');
        if (line[i] is not ('.' or ',') || !char.IsAsciiDigit(line[i + 1]) || i - start > 6)
            return false;
        for (var k = start; k < i; k++)
            if (!char.IsAsciiDigit(line[k]))
                return false;
        if (line[i] == '.')
            return true;
        // A comma is a decimal one only where at most three digits and a unit follow: "3,3 V", not "91,01,08".
        var end = i + 1;
        while (end < line.Length && end - i <= 4 && char.IsAsciiDigit(line[end]))
            end++;
        if (end - i > 4)
            return false;
        if (end < line.Length && line[end] == ' ')
            end++;
        if (end < line.Length && line[end] == 'm')
            end++;
        return end < line.Length && line[end] is 'V' or 'A' or 'W' or 'v' && (end + 1 == line.Length || !char.IsLetterOrDigit(line[end + 1]));
    }
}
