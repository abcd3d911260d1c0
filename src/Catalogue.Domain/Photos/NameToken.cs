using System.Globalization;
using System.Text;
using Catalogue.Domain.Families;

namespace Catalogue.Domain.Photos;

/// <summary>A word or a number in a name.</summary>
/// <param name="Text">As written, in Unicode's composed form (NFKC).</param>
/// <param name="Key">Folded for comparing: lower case, Latin letters without their marks, ß as ss; a number without its leading zeros.</param>
/// <param name="Start">Where it starts in the composed name.</param>
internal sealed record NameToken(string Text, string Key, int Start)
{
    /// <summary>Where it ends in the composed name.</summary>
    public int End => Start + Text.Length;

    /// <summary>True for digits.</summary>
    public bool IsNumber => char.IsAsciiDigit(Text[0]);

    /// <summary>True for digits that begin with a zero, as counters of pictures do.</summary>
    public bool IsPadded => Text.Length > 1 && Text[0] == '0';

    /// <summary>Composes a name: NFKC, without half characters. Tokens and their places are those of the composed name.</summary>
    public static string Compose(string name) => WellFormedText.Of(name).Normalize(NormalizationForm.FormKC);

    /// <summary>
    /// The tokens of a composed name. Whatever is neither letter nor digit parts them; so does a change between letters and digits, between
    /// scripts, and from small letters to a capital.
    /// </summary>
    public static List<NameToken> Of(string composed)
    {
        var tokens = new List<NameToken>();
        for (var at = 0; at < composed.Length;)
        {
            var kind = KindOf(composed, at);
            var end = at + 1;
            while (end < composed.Length && KindOf(composed, end) == kind && !(kind == Script.Letters && char.IsUpper(composed[end]) && char.IsLower(composed[end - 1])))
                end++;
            if (kind == Script.Unspaced)
                Cut(composed, at, end, tokens);
            else if (kind != Script.None)
                tokens.Add(Token(composed, at, end));
            at = end;
        }

        return tokens;
    }

    /// <summary>Folds a text as <see cref="Key"/> is folded.</summary>
    public static string Fold(string text)
    {
        var folded = new StringBuilder(text.Length);
        foreach (var character in text.Normalize(NormalizationForm.FormD))
        {
            // Only the marks of European letters: kana carry theirs as part of the sound.
            if (character is < '\u0300' or > '\u036F')
                folded.Append(character == 'ß' ? "ss" : char.ToLowerInvariant(character));
        }

        return folded.ToString().Normalize(NormalizationForm.FormC);
    }

    private static NameToken Token(string composed, int start, int end)
    {
        var text = composed[start..end];
        var key = char.IsAsciiDigit(text[0]) ? text.TrimStart('0') is { Length: > 0 } digits ? digits : "0" : Fold(text);
        return new NameToken(text, key, start);
    }

    // A run of characters of a script without blanks is cut at the words that are known; a word of one character counts at the end only.
    private static void Cut(string composed, int start, int end, List<NameToken> tokens)
    {
        var rest = start;
        for (var at = start; at < end;)
        {
            var length = 0;
            foreach (var word in PhotoWords.Unspaced)
            {
                if (word.Length <= end - at && (word.Length > 1 || at == end - 1 || end - start == 2) && string.CompareOrdinal(composed, at, word, 0, word.Length) == 0)
                {
                    length = word.Length;
                    break;
                }
            }

            if (length == 0)
            {
                at++;
                continue;
            }

            if (at > rest)
                tokens.Add(Token(composed, rest, at));
            tokens.Add(Token(composed, at, at + length));
            at += length;
            rest = at;
        }

        if (end > rest)
            tokens.Add(Token(composed, rest, end));
    }

    private static Script KindOf(string text, int at)
    {
        var character = text[at];
        if (char.IsAsciiDigit(character))
            return Script.Digits;
        if (character is (>= '\u3041' and <= '\u30FA') or (>= '\u30FC' and <= '\u30FF') or (>= '\u3400' and <= '\u9FFF') or (>= '\uF900' and <= '\uFAFF') or '\u3005')
            return Script.Unspaced;
        // Letters beyond the basic plane come as two halves, which stay together.
        return char.IsLetter(character) || char.IsSurrogate(character) || char.GetUnicodeCategory(character) is UnicodeCategory.NonSpacingMark or UnicodeCategory.SpacingCombiningMark or UnicodeCategory.DecimalDigitNumber
            ? Script.Letters
            : Script.None;
    }

    private enum Script
    {
        None,
        Letters,
        Digits,
        Unspaced,
    }
}
