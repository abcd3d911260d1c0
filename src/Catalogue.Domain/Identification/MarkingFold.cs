using System.Globalization;
using System.Text;
using Catalogue.Domain.Families;

namespace Catalogue.Domain.Identification;

/// <summary>What was read on a part, made comparable: for candidates only, never for identity.</summary>
public static class MarkingFold
{
    /// <summary>Stands for one character that is there and could not be read.</summary>
    public const char Unreadable = '?';

    // Boxes and replacement signs are what people and fonts put for a character they could not make out.
    private const string UnreadableSigns = "?□■▢▯▮◻◼☐\uFFFD¿";

    /// <summary>
    /// One line, compatibility-normalised (NFKC) and upper case, letters that only look Latin put as Latin, signs for an unreadable character put as
    /// <see cref="Unreadable"/>, invisible characters gone, blanks made one. Separators stay.
    /// </summary>
    public static string Line(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var normal = ForeignLetters.ToLatinShapes(WellFormedText.Of(text).Normalize(NormalizationForm.FormKC).ToUpperInvariant());
        var folded = new StringBuilder(normal.Length);
        var pendingBlank = false;
        foreach (var character in normal)
        {
            if (char.IsWhiteSpace(character))
            {
                pendingBlank = folded.Length > 0;
                continue;
            }

            var category = char.GetUnicodeCategory(character);
            if (category is UnicodeCategory.Format or UnicodeCategory.Control)
                continue;
            if (pendingBlank)
                folded.Append(' ');
            pendingBlank = false;
            folded.Append(
                UnreadableSigns.Contains(character, StringComparison.Ordinal) ? Unreadable
                : category == UnicodeCategory.DashPunctuation || character == '\u2212' ? '-'
                : character);
        }

        return folded.ToString();
    }

    /// <summary>The letters, digits and unreadable places of a folded line, at most <see cref="MarkingKeys.MaxLength"/>.</summary>
    public static string Signs(string line)
    {
        ArgumentNullException.ThrowIfNull(line);
        var signs = new StringBuilder(Math.Min(line.Length, MarkingKeys.MaxLength));
        foreach (var character in line)
        {
            if (signs.Length == MarkingKeys.MaxLength)
                break;
            if (LookAlikes.Index(character) >= 0 || character == Unreadable)
                signs.Append(character);
        }

        return signs.ToString();
    }
}
