using System.Buffers;
using System.Text;

namespace Catalogue.Domain.Quantities;

/// <summary>
/// A text with one character for each thing people mean by several: full-width forms, the two micros and the two omegas, every dash, every blank,
/// the signs for ac and dc. Character by character, so that a place in it is a place in the text as typed.
/// </summary>
internal static class FoldedText
{
    private static readonly SearchValues<char> Plain = SearchValues.Create(string.Concat(Enumerable.Range(' ', '~' - ' ' + 1).Select(c => (char)c).Where(c => c is not ('*' or '`'))));

    /// <summary>Folds in place; the span must be a copy.</summary>
    public static void Fold(Span<char> text)
    {
        for (var i = 0; i < text.Length; i++)
            text[i] = Fold(text[i]);
    }

    /// <summary>True where the text needs no folding: plain ASCII without control characters, backticks and asterisks.</summary>
    public static bool IsFolded(ReadOnlySpan<char> text) => text.IndexOfAnyExcept(Plain) < 0;

    /// <summary>True where a character stands for several (<c>㎌</c>, <c>㏀</c>): such texts are widened first.</summary>
    public static bool IsSquared(char c) => c is >= '\u3300' and <= '\u33FF';

    /// <summary>The text with squared units written out, and for each of its characters the place it comes from.</summary>
    public static (string Text, int[] Places) Widen(string text)
    {
        var wide = new StringBuilder(text.Length + 8);
        var places = new List<int>(text.Length + 8);
        for (var i = 0; i < text.Length; i++)
        {
            wide.Append(IsSquared(text[i]) ? text[i].ToString().Normalize(NormalizationForm.FormKC) : text[i].ToString());
            while (places.Count < wide.Length)
                places.Add(i);
        }

        places.Add(text.Length);
        return (wide.ToString(), [.. places]);
    }

    private static char Fold(char c) => c switch
    {
        '`' => '\'',
        '*' => 'x',
        >= '!' and <= '~' => c,
        >= '\uFF01' and <= '\uFF5E' => Fold((char)(c - 0xFEE0)),
        '\u03BC' or '\u00B5' => 'µ',
        '\u2126' or '\u03A9' => 'Ω',
        '\u2212' or '\uFE63' or (>= '\u2010' and <= '\u2015') => '-',
        '\u22EF' => '…',
        '\u00D7' or '\u2715' or '\u2716' or '\u22C5' => 'x',
        '\u2018' or '\u2019' or '\u00B4' or '\u02BC' => '\'',
        '\u223C' or '\u223F' or '\u23E6' or '\u02DC' or '\u301C' => '~',
        '\u2393' or '\u23AF' or '\u2550' => '=',
        '\u2A7D' or '\u2266' => '≤',
        '\u2A7E' or '\u2267' => '≥',
        '\u00BA' or '\u02DA' => '°',
        '\u2044' or '\u2215' => '/',
        _ when char.IsWhiteSpace(c) || char.IsControl(c) || c is '\u200B' or '\uFEFF' or '\u00AD' or '\u200E' or '\u200F' => ' ',
        _ => c,
    };
}
