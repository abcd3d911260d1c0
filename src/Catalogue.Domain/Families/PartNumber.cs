using System.Collections.Frozen;
using System.Globalization;
using System.Text;

namespace Catalogue.Domain.Families;

/// <summary>
/// A maker's ordering code, split into what identifies the electrical part and what only says how it was packed and finished.
/// </summary>
/// <remarks>
/// <para>
/// Tokens are peeled from the right, only at a separator (<c>-</c>, <c>/</c>, <c>#</c>, blank, brackets, a final <c>+</c>), until the first
/// token that is not known. Letters glued to the number are never peeled. A token of digits is kept unless it is 7 or 13 (reel diameter in
/// inches) after a hyphen. Where no base would remain, nothing is peeled.
/// </para>
/// <para>
/// Never fuzzy: numbers that differ in one character, in a leading zero, or in a letter that only looks alike are different numbers.
/// </para>
/// <para>Source: EIA-481 (tape and reel), J-STD-609 (finish marks e1 to e7), AEC-Q100/101/200 (automotive grade), else trade usage.</para>
/// </remarks>
public sealed class PartNumber
{
    private static readonly FrozenSet<string> PackingTokens = FrozenSet.ToFrozenSet(
        ["TR", "T/R", "TP", "R", "RL", "REEL", "TB", "TR7", "TR13", "TUBE", "U", "TRAY", "Y", "BULK", "AMMO", "CT"]);

    private static readonly FrozenSet<string> FinishTokens = FrozenSet.ToFrozenSet(["PBF", "NOPB", "G", "F", "LF", "GREEN", "HF"]);

    private static readonly FrozenSet<string> BracketedFinishTokens = FrozenSet.ToFrozenSet(["E1", "E2", "E3", "E4", "E5", "E6", "E7"]);

    private static readonly FrozenSet<string> GradeTokens = FrozenSet.ToFrozenSet(["C", "I", "E", "M", "Q", "Q1", "A", "AEC"]);

    private static readonly string[] GluedFinishes = ["PBF", "NOPB"];

    private const int LongestToken = 5;

    private PartNumber(string asWritten, string folded)
    {
        AsWritten = asWritten;
        var peeled = Peel(folded);
        Base = peeled.Base;
        Packing = peeled.Packing;
        Finish = peeled.Finish;
        Grade = peeled.Grade;
        MatchKey = Grade is null ? Base : $"{Base}-{Grade}";
        SearchKey = Search(folded);
        ForeignLetters = Foreign(folded);
        PossibleBase = GluedBase(Base);
    }

    private enum TokenClass
    {
        Unknown,
        Packing,
        Finish,
        Grade,
    }

    /// <summary>The number as it was written, without blanks at its ends.</summary>
    public string AsWritten { get; }

    /// <summary>
    /// The base number: compatibility-normalised (NFKC), upper case, dashes folded to <c>-</c>, packing, finish and grade peeled. Never empty.
    /// </summary>
    public string Base { get; }

    /// <summary>
    /// The identity: <see cref="Base"/>, and <see cref="Grade"/> after a hyphen where there is one, since a grade changes ratings. Two numbers name the
    /// same part exactly when their keys are equal, compared ordinally. The key of a key is the key.
    /// </summary>
    public string MatchKey { get; }

    /// <summary>
    /// Upper-case A to Z and 0 to 9 of the whole number, for finding only: different parts may share it. Empty where no such character is in
    /// it.
    /// </summary>
    public string SearchKey { get; }

    /// <summary>
    /// How the part was packed (<c>TR</c>, <c>T/R</c>, <c>TUBE</c>, <c>13</c> ...), several tokens joined by a hyphen in written order; null
    /// where not said.
    /// </summary>
    public string? Packing { get; }

    /// <summary>Lead finish (<c>PBF</c>, <c>+</c>, <c>E3</c> ...), several tokens joined by a hyphen in written order; null where not said.</summary>
    public string? Finish { get; }

    /// <summary>Temperature or qualification grade (<c>Q1</c>, <c>I</c> ...); its meaning varies by maker. Null where not said.</summary>
    public string? Grade { get; }

    /// <summary>
    /// The different letters of scripts whose letters look like Latin ones (Greek, Cyrillic, Armenian, Cherokee), in order of appearance, upper case.
    /// Such a number is never merged with its Latin look-alike; the letters are listed so that a person can see them.
    /// </summary>
    public IReadOnlyList<Rune> ForeignLetters { get; }

    /// <summary>
    /// The base that would remain if a finish glued to the number (<c>...PBF</c>) were cut off: a weak candidate to offer, never an identity.
    /// Else null.
    /// </summary>
    public string? PossibleBase { get; }

    /// <summary>Reads a part number.</summary>
    /// <param name="raw">Any text; line breaks, direction marks, unpaired surrogates and the like are tolerated.</param>
    /// <returns>Null where the text is blank, a placeholder (<see cref="PlaceholderText"/>) or a spreadsheet error.</returns>
    public static PartNumber? From(string? raw)
    {
        if (PlaceholderText.IsPlaceholder(raw))
        {
            return null;
        }
        var folded = Fold(raw!);
        // Full-width "ＡＮＹ" shows itself as a placeholder only after folding.
        return PlaceholderText.IsPlaceholder(folded) ? null : new PartNumber(raw!.Trim(), folded);
    }

    /// <summary>The number as written.</summary>
    public override string ToString() => AsWritten;

    private static string Fold(string raw)
    {
        var text = raw;
        // Upper-casing can undo a normal form and the other way round; a few rounds reach the fixed point, so that the key of a key is the key.
        for (var round = 0; round < 4; round++)
        {
            var next = FoldOnce(text);
            if (next == text)
            {
                break;
            }
            text = next;
        }
        return text;
    }

    private static string FoldOnce(string text)
    {
        var normal = WellFormedText.Of(text).Normalize(NormalizationForm.FormKC).ToUpperInvariant();
        var folded = new StringBuilder(normal.Length);
        var pendingBlank = false;
        foreach (var character in normal)
        {
            if (char.IsWhiteSpace(character))
            {
                pendingBlank = true;
                continue;
            }
            var category = char.GetUnicodeCategory(character);
            if (category is UnicodeCategory.Format or UnicodeCategory.Control)
            {
                continue;
            }
            var next = category == UnicodeCategory.DashPunctuation || character == '\u2212' ? '-' : character;
            // Blanks beside a dash or slash are spacing, not part of the number.
            if (pendingBlank && folded.Length > 0 && next is not ('-' or '/') && folded[^1] is not ('-' or '/'))
            {
                folded.Append(' ');
            }
            pendingBlank = false;
            folded.Append(next);
        }
        return folded.ToString();
    }

    private static (string Base, string? Packing, string? Finish, string? Grade) Peel(string folded)
    {
        var rest = folded;
        var (packing, finish, grade) = ((string?)null, (string?)null, (string?)null);
        while (TryPeel(rest, out var shorter, out var token, out var tokenClass))
        {
            rest = shorter;
            switch (tokenClass)
            {
                case TokenClass.Packing:
                    packing = Before(token, packing);
                    break;
                case TokenClass.Finish:
                    finish = Before(token, finish);
                    break;
                default:
                    grade = Before(token, grade);
                    break;
            }
        }
        return PlaceholderText.HasLetterOrDigit(rest) ? (rest, packing, finish, grade) : (folded, null, null, null);

        static string Before(string token, string? later) => later is null ? token : $"{token}-{later}";
    }

    private static bool TryPeel(string text, out string shorter, out string token, out TokenClass tokenClass)
    {
        (shorter, token, tokenClass) = (text, "", TokenClass.Unknown);
        if (text.Length < 2)
        {
            return false;
        }
        if (text[^1] == '+')
        {
            (shorter, token, tokenClass) = (text[..^1].TrimEnd(), "+", TokenClass.Finish);
            return true;
        }
        var bracketed = text[^1] is ')' or ']';
        var end = bracketed ? text.Length - 1 : text.Length;
        var start = bracketed
            ? text.LastIndexOf(text[^1] == ')' ? '(' : '[', end - 1, Math.Min(end, LongestToken + 1))
            : LastSeparator(text);
        if (start < 0)
        {
            return false;
        }
        token = text[(start + 1)..end].Trim();
        tokenClass = Classify(token, bracketed ? '(' : text[start]);
        if (tokenClass == TokenClass.Unknown)
        {
            return false;
        }
        shorter = text[..start].TrimEnd();
        if (bracketed && shorter.Length > 0 && IsSeparator(shorter[^1]))
        {
            shorter = shorter[..^1].TrimEnd();
        }
        return true;
    }

    private static int LastSeparator(string text)
    {
        // "T/R" holds a separator itself.
        if (text.EndsWith("T/R", StringComparison.Ordinal) && text.Length > 3 && IsSeparator(text[^4]))
        {
            return text.Length - 4;
        }
        for (var i = text.Length - 1; i >= Math.Max(0, text.Length - LongestToken - 1); i--)
        {
            if (IsSeparator(text[i]))
            {
                return i;
            }
        }
        return -1;
    }

    private static bool IsSeparator(char character) => character is '-' or '/' or '#' or ' ';

    private static TokenClass Classify(string token, char separator)
    {
        if (PackingTokens.Contains(token) || (separator == '-' && token is "7" or "13"))
        {
            return TokenClass.Packing;
        }
        if (FinishTokens.Contains(token) || (separator == '(' && BracketedFinishTokens.Contains(token)))
        {
            return TokenClass.Finish;
        }
        return GradeTokens.Contains(token) ? TokenClass.Grade : TokenClass.Unknown;
    }

    private static string Search(string folded)
    {
        var key = new StringBuilder(folded.Length);
        foreach (var character in folded.Normalize(NormalizationForm.FormKD))
        {
            if (char.IsAsciiLetterUpper(character) || char.IsAsciiDigit(character))
            {
                key.Append(character);
            }
        }
        return key.ToString();
    }

    private static List<Rune> Foreign(string folded)
    {
        var letters = new List<Rune>();
        var seen = new HashSet<Rune>();
        foreach (var rune in folded.EnumerateRunes())
        {
            if (Rune.IsLetter(rune) && HasLatinLookAlikes(rune.Value) && seen.Add(rune))
            {
                letters.Add(rune);
            }
        }
        return letters;
    }

    private static bool HasLatinLookAlikes(int codePoint) => codePoint is
        (>= 0x0370 and <= 0x03FF) or (>= 0x1F00 and <= 0x1FFF) or // Greek
        (>= 0x0400 and <= 0x052F) or (>= 0x1C80 and <= 0x1C8F) or (>= 0xA640 and <= 0xA69F) or // Cyrillic
        (>= 0x0530 and <= 0x058F) or // Armenian
        (>= 0x13A0 and <= 0x13FF); // Cherokee

    private static string? GluedBase(string baseNumber)
    {
        foreach (var finish in GluedFinishes)
        {
            if (baseNumber.Length > finish.Length + 2 && baseNumber.EndsWith(finish, StringComparison.Ordinal))
            {
                return baseNumber[..^finish.Length];
            }
        }
        return null;
    }
}
