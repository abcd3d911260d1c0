using System.Collections.Frozen;
using System.Globalization;
using System.Text;

namespace Catalogue.Domain.Families;

/// <summary>Words people write where a name or a number is missing: they stand for "no answer", never for a maker or a part.</summary>
/// <remarks>House rule: the word stays in the row as read, the field it stood in is unknown.</remarks>
public static class PlaceholderText
{
    private static readonly FrozenSet<string> Words = FrozenSet.ToFrozenSet(
    [
        "any", "n/a", "na", "n.a.", "n/k", "unknown", "unk", "none", "null", "nil", "tbd", "t.b.d.", "tba", "generic", "various", "unspecified",
        "not specified",
        "beliebig", "unbekannt", "keine", "keiner", "divers", "egal",
        "inconnu", "inconnue", "aucun", "aucune", "quelconque",
        "desconocido", "desconocida", "ninguno", "ninguna", "cualquiera",
        "不明", "未知", "无", "無", "なし", "任意", "未定", "待定",
    ], StringComparer.OrdinalIgnoreCase);

    private static readonly FrozenSet<string> SpreadsheetErrors = FrozenSet.ToFrozenSet(
    [
        "#REF!", "#N/A", "#VALUE!", "#NAME?", "#DIV/0!", "#NUM!", "#NULL!", "#SPILL!", "#CALC!", "#FIELD!",
        "#BEZUG!", "#NV", "#WERT!", "#ZAHL!", "#VALEUR!", "#NOM?", "#NOMBRE!", "#VALOR!", "#¿NOMBRE?", "#¡REF!", "#¡VALOR!",
    ], StringComparer.OrdinalIgnoreCase);

    /// <summary>
    /// True when the text names nothing: blank, a word such as <c>any</c> or <c>unknown</c>, marks only (<c>?</c>, <c>-</c>, <c>~</c>), or a
    /// spreadsheet error.
    /// </summary>
    public static bool IsPlaceholder(string? text)
    {
        if (string.IsNullOrWhiteSpace(text))
        {
            return true;
        }
        var trimmed = text.Trim();
        return Words.Contains(trimmed) || IsSpreadsheetError(trimmed) || !HasLetterOrDigit(trimmed);
    }

    /// <summary>True when the text is what a spreadsheet shows for a formula that failed, such as <c>#REF!</c>.</summary>
    public static bool IsSpreadsheetError(string? text) => text is not null && SpreadsheetErrors.Contains(text.Trim());

    internal static bool HasLetterOrDigit(string text)
    {
        foreach (var rune in text.EnumerateRunes())
        {
            // A lone surrogate enumerates as U+FFFD, which is no letter.
            if (Rune.IsLetterOrDigit(rune) || Rune.GetUnicodeCategory(rune) is UnicodeCategory.OtherNumber or UnicodeCategory.LetterNumber)
            {
                return true;
            }
        }
        return false;
    }
}
