using System.Text;

namespace Catalogue.Domain.Families;

/// <summary>Text that may hold half a surrogate pair or a noncharacter, made safe to normalise, store and show.</summary>
public static class WellFormedText
{
    /// <summary>The text with U+FFFD for each half surrogate pair and for U+FFFE, which normalisation refuses.</summary>
    public static string Of(string text)
    {
        if (!text.Contains('\uFFFE', StringComparison.Ordinal) && !HasLoneSurrogate(text))
        {
            return text;
        }
        var mended = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            mended.Append(rune.Value == 0xFFFE ? Rune.ReplacementChar : rune);
        }
        return mended.ToString();
    }

    /// <summary>At most so many characters of the text, never half a pair, with an ellipsis where it was cut.</summary>
    public static string Shorten(string text, int longest) => text.Length <= longest ? text : $"{Start(text, longest)}…";

    /// <summary>The text's first characters, never half a pair.</summary>
    public static string Start(string text, int length) =>
        text.Length <= length ? text : text[..(char.IsHighSurrogate(text[length - 1]) ? length - 1 : length)];

    private static bool HasLoneSurrogate(string text)
    {
        for (var i = 0; i < text.Length; i++)
        {
            if (!char.IsSurrogate(text[i]))
            {
                continue;
            }
            if (i + 1 >= text.Length || !char.IsSurrogatePair(text[i], text[i + 1]))
            {
                return true;
            }
            i++;
        }
        return false;
    }
}
