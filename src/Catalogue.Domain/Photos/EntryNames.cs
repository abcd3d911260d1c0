using System.Globalization;
using System.Text;

namespace Catalogue.Domain.Photos;

/// <summary>The names in a zip file that does not say their encoding, decoded together: one program wrote them all.</summary>
/// <remarks>
/// By the standard such names are code page 437 (APPNOTE.TXT 6.3, appendix D); programs write whatever their machine speaks. UTF-8 is taken where all
/// names are valid UTF-8. Else the encoding is a guess: the one by which most characters beyond ASCII are letters where letters are likely.
/// </remarks>
public sealed record EntryNames
{
    private const double MuchBetter = 0.15;

    private static readonly UTF8Encoding StrictUtf8 = new(false, true);

    // The order decides between equals; the standard's own comes first.
    private static readonly (int CodePage, string Name)[] Candidates = [(437, "IBM437"), (1252, "windows-1252"), (932, "Shift_JIS"), (936, "GBK")];

    private EntryNames(IReadOnlyList<string> names, string encoding, bool isGuess) => (Names, Encoding, IsGuess) = (names, encoding, isGuess);

    /// <summary>The names, in the order in which they were given.</summary>
    public IReadOnlyList<string> Names { get; }

    /// <summary>IANA name of the encoding that was taken; <c>US-ASCII</c> where there was nothing to decide.</summary>
    public string Encoding { get; }

    /// <summary>True where the encoding is a guess, so that a person should look at the names.</summary>
    public bool IsGuess { get; }

    /// <summary>Decodes names.</summary>
    /// <param name="names">The bytes of each.</param>
    public static EntryNames Decode(IReadOnlyList<byte[]> names)
    {
        ArgumentNullException.ThrowIfNull(names);
        if (names.All(name => System.Text.Ascii.IsValid(name)))
            return new EntryNames([.. names.Select(System.Text.Encoding.ASCII.GetString)], "US-ASCII", false);
        if (names.All(name => System.Text.Unicode.Utf8.IsValid(name)))
            return new EntryNames([.. names.Select(StrictUtf8.GetString)], "UTF-8", false);
        var (best, bestScore) = (Decode(names, Candidates[0])!, Score(Decode(names, Candidates[0])!.Names));
        foreach (var candidate in Candidates.Skip(1))
        {
            if (Decode(names, candidate) is { } decoded && Score(decoded.Names) is var score && score > bestScore + MuchBetter)
                (best, bestScore) = (decoded, score);
        }

        return best;
    }

    private static EntryNames? Decode(IReadOnlyList<byte[]> names, (int CodePage, string Name) candidate)
    {
        var encoding = CodePagesEncodingProvider.Instance.GetEncoding(candidate.CodePage, EncoderFallback.ReplacementFallback, DecoderFallback.ExceptionFallback)!;
        try
        {
            return new EntryNames([.. names.Select(encoding.GetString)], candidate.Name, true);
        }
        catch (DecoderFallbackException)
        {
            return null;
        }
    }

    // The share of characters beyond ASCII that are likely where they stand.
    private static double Score(IReadOnlyList<string> names)
    {
        int all = 0, likely = 0;
        foreach (var name in names)
        {
            for (var i = 0; i < name.Length; i++)
            {
                if (char.IsAscii(name[i]))
                    continue;
                all++;
                likely += IsLikely(name, i) ? 1 : 0;
            }
        }

        return all == 0 ? 0 : (double)likely / all;
    }

    private static bool IsLikely(string name, int at)
    {
        var character = name[at];
        if (IsEastAsian(character))
        {
            // Such characters come together; one alone between Latin letters is two other letters read as one.
            var isAlone = (at == 0 || !IsEastAsian(name[at - 1])) && (at + 1 == name.Length || !IsEastAsian(name[at + 1]));
            return !isAlone || ((at == 0 || !char.IsAsciiLetter(name[at - 1])) && (at + 1 == name.Length || !char.IsAsciiLetter(name[at + 1])));
        }

        // Accented letters of European languages; a capital in the middle of small letters is none that anybody wrote.
        return character is (>= 'À' and <= 'ɏ') and not ('×' or '÷')
            && !(char.IsUpper(character) && at > 0 && char.IsLower(name[at - 1]));
    }

    private static bool IsEastAsian(char character) =>
        character is (>= '\u3005' and <= '\u30FF') or (>= '\u4E00' and <= '\u9FFF') or (>= '\uFF10' and <= '\uFF5A')
        || (char.GetUnicodeCategory(character) == UnicodeCategory.OtherLetter && character >= '\u3400' && character < '\uFF61');
}
