using System.Globalization;
using System.Text;

namespace Catalogue.Domain.Identification;

/// <summary>What is odd about a marking as it was typed or pasted, in sentences for the person who did.</summary>
public static class MarkingRemarks
{
    /// <summary>The remarks; none for an ordinary marking. Each letter or sign is named with its code point, at most a few of them.</summary>
    public static IReadOnlyList<string> Of(string marking)
    {
        ArgumentNullException.ThrowIfNull(marking);
        var remarks = new List<string>();
        if (marking.Length > MarkingReadings.MaxMarkingLength)
            remarks.Add(FormattableString.Invariant($"The text has {marking.Length} characters; a marking has at most {MarkingReadings.MaxMarkingLength}."));
        if (!MarkingFold.Line(marking).Any(char.IsAsciiLetterOrDigit))
            remarks.Add("Nothing in the text is a letter or a digit of a part number.");
        var runes = marking.EnumerateRunes().Distinct().ToList();
        if (runes.Where(rune => LatinOf(rune) is not null).ToList() is { Count: > 0 } foreign)
            remarks.Add($"The text holds letters of another alphabet that look like Latin ones: {Listed(foreign, rune => $"{Named(rune)} for {LatinOf(rune)}")}. They make candidates and join nothing.");
        if (runes.Where(rune => Rune.GetUnicodeCategory(rune) is UnicodeCategory.Format).ToList() is { Count: > 0 } invisible)
            remarks.Add($"The text holds signs that nobody sees: {Listed(invisible, Code)}. They are left out of the search.");
        if (runes.Where(rune => !rune.IsAscii && Rune.GetUnicodeCategory(rune) is UnicodeCategory.OtherSymbol or UnicodeCategory.PrivateUse or UnicodeCategory.OtherNotAssigned && !IsUnreadable(rune)).ToList() is { Count: > 0 } pictures)
            remarks.Add($"The text holds signs that no part number has: {Listed(pictures, Named)}. They are left out of the search.");
        return remarks;
    }

    // A micro sign is the prefix of a unit.
    private static char? LatinOf(Rune rune) => rune.IsBmp && rune.Value is not ('\u00B5' or '\u03BC') ? ForeignLetters.Shape((char)Rune.ToUpperInvariant(rune).Value) : null;

    // What a character that was not made out is written as is no oddity.
    private static bool IsUnreadable(Rune rune) => MarkingFold.Line(rune.ToString()) == MarkingFold.Unreadable.ToString();

    private static string Listed(List<Rune> runes, Func<Rune, string> name) =>
        string.Join(", ", runes.Take(8).Select(name)) + (runes.Count > 8 ? FormattableString.Invariant($" and {runes.Count - 8} more") : "");

    private static string Named(Rune rune) => $"{rune} ({Code(rune)})";

    private static string Code(Rune rune) => FormattableString.Invariant($"U+{rune.Value:X4}");
}
