using System.Globalization;

namespace Catalogue.Domain.UsbPd;

/// <summary>Reads one word as people write it.</summary>
public static class WordText
{
    private const int Digits = 8;

    /// <summary>
    /// Reads <c>0x0801912C</c>, <c>0801912c</c>, <c>0X0801_912CU</c>, <c>0801912Ch</c>, <c>32'h0801912C</c>, <c>$0801912C</c>, <c>0x0801'912Cu32</c>.
    /// Eight digits exactly: a shorter or longer one may have lost or gained a digit anywhere, so nothing is padded or cut.
    /// </summary>
    /// <param name="text">Any text; null is no word.</param>
    /// <param name="word">The word, or 0.</param>
    /// <returns>Null where it was read, else why not, as a sentence.</returns>
    public static string? Read(string? text, out uint word)
    {
        word = 0;
        var trimmed = text.AsSpan().Trim();
        if (trimmed.IsEmpty)
            return "It is empty.";
        if (trimmed.Length > 40)
            return "It is far too long.";
        var digits = HexDigits(trimmed, out _);
        if (digits is null)
            return "It is not hexadecimal.";
        if (digits.Length != Digits)
            return string.Create(CultureInfo.InvariantCulture, $"It is too {(digits.Length < Digits ? "short" : "long")}: {digits.Length} digits instead of {Digits}.");
        word = uint.Parse(digits, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture);
        return null;
    }

    /// <summary>The hexadecimal digits of a number without prefix, suffix and separators; null where it is none.</summary>
    /// <param name="text">Without blanks at its ends.</param>
    /// <param name="isMarked">True where prefix or suffix say that it is hexadecimal.</param>
    internal static string? HexDigits(ReadOnlySpan<char> text, out bool isMarked)
    {
        isMarked = true;
        if (text.StartsWith("0x", StringComparison.OrdinalIgnoreCase))
            text = text[2..];
        else if (text.StartsWith("32'h", StringComparison.OrdinalIgnoreCase))
            text = text[4..];
        else if (text.Length > 1 && text[0] is '$' or '#')
            text = text[1..];
        else
            isMarked = false;
        if (isMarked && text.EndsWith("u32", StringComparison.OrdinalIgnoreCase))
        {
            text = text[..^3];
        }
        else if (text.Length > 0 && text[^1] is 'h' or 'H')
        {
            isMarked = true;
            text = text[..^1];
        }
        else
        {
            text = text.TrimEnd("uUlL");
        }

        text = text.TrimEnd('_');
        if (text.IsEmpty || text[0] is '_' or '\'')
            return null;
        var digits = new char[text.Length];
        var count = 0;
        foreach (var character in text)
        {
            if (character is '_' or '\'')
                continue;
            if (!char.IsAsciiHexDigit(character))
                return null;
            digits[count++] = character;
        }

        return new string(digits, 0, count);
    }

    /// <summary>The readable ones of several, in their order.</summary>
    public static IReadOnlyList<uint> ReadAll(IEnumerable<string> texts)
    {
        ArgumentNullException.ThrowIfNull(texts);
        var words = new List<uint>();
        foreach (var text in texts)
            if (Read(text, out var word) is null)
                words.Add(word);
        return words;
    }
}
