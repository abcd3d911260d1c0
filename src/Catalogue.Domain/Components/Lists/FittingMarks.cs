using System.Collections.Frozen;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace Catalogue.Domain.Components.Lists;

/// <summary>Marks that say a place on the board is left empty.</summary>
internal static partial class FittingMarks
{
    private static readonly FrozenSet<string> Sure = FrozenSet.ToFrozenSet(
        ["DNP", "DNF", "DNI", "DNM", "NOTFITTED", "NOTPOPULATED", "NOTPLACED", "NOTMOUNTED", "DONOTPOPULATE", "DONOTFIT", "DONOTPLACE", "DONOTMOUNT",
        "DONOTINSTALL",
        "UNPOPULATED", "NICHTBESTÜCKT", "UNBESTÜCKT", "NONMONTÉ", "NOMONTAR", "NOMONTADO", "不贴", "不装", "未実装", "実装しない"]);

    private static readonly FrozenSet<string> Likely = FrozenSet.ToFrozenSet(["NF", "NB", "NC", "NP", "NM", "NI"]);

    private static readonly FrozenSet<string> No = FrozenSet.ToFrozenSet(["NO", "N", "0", "FALSE", "NEIN", "NON", "FALSCH", "FAUX", "否", "×", "NONE"]);

    private static readonly FrozenSet<string> Yes = FrozenSet.ToFrozenSet(["YES", "Y", "1", "TRUE", "JA", "OUI", "SÍ", "SI", "WAHR", "VRAI", "是"]);

    /// <summary>What a value cell says: null for no mark, else whether the mark leaves no doubt, and the value without it.</summary>
    public static (bool Sure, string Mark, string Remainder)? InValue(string value)
    {
        var whole = Plain(value);
        if (Sure.Contains(whole))
        {
            return (true, value.Trim(), "");
        }
        if (Likely.Contains(whole))
        {
            return (false, value.Trim(), "");
        }
        foreach (Match token in Token().Matches(value))
        {
            var plain = Plain(token.Value);
            var sure = Sure.Contains(plain);
            // "100 NF" is a capacitance, and a bare "NC" after a name is a contact: only the dotted form or a mark in front is read as one.
            var likely = Likely.Contains(plain) && (token.Value.Contains('.', StringComparison.Ordinal) || (plain == "NF" && token.Index == 0));
            if (sure || likely)
            {
                var rest = $"{value[..token.Index]} {value[(token.Index + token.Length)..]}".Trim(' ', '/', '(', ')', '[', ']', ',', ';', '-');
                return (sure || plain is "NF" or "NB", token.Value, rest.Replace("()", "", StringComparison.Ordinal).Trim());
            }
        }
        return null;
    }

    /// <summary>Whether free text holds a mark that leaves little doubt.</summary>
    public static bool InText(string text) =>
        Token().Matches(text).Any(token => token.Value is "DNP" or "DNF" or "DNI" or "DNM") || Phrase().IsMatch(text);

    /// <summary>Whether a cell says yes.</summary>
    public static bool IsYes(string cell) => Plain(cell) is "X" or "✓" or "✔" or "●" or "FITTED" || Yes.Contains(Plain(cell));

    /// <summary>Whether a cell holds nothing but a mark that leaves no doubt.</summary>
    public static bool IsMark(string text) => Sure.Contains(Plain(text));

    /// <summary>A designator cell without the marks that stand among the designators.</summary>
    public static string WithoutMarks(string text) => InText(text) ? AmongDesignators().Replace(text, " ").Trim() : text;

    /// <summary>What a cell says under a header such as “DNP” (true: the place is empty); null where the cell is not understood.</summary>
    public static (bool? Empty, bool Sure) UnderNotFitted(string cell)
    {
        var plain = Plain(cell);
        if (plain.Length == 0 || No.Contains(plain) || plain == "FITTED")
        {
            return (false, true);
        }
        if (Yes.Contains(plain) || Sure.Contains(plain) || Likely.Contains(plain))
        {
            return (true, true);
        }
        return plain is "X" or "✓" or "✔" or "●" ? (true, false) : (null, false);
    }

    /// <summary>Whether a cell under a header such as “Assembly” says that the place is empty.</summary>
    public static bool UnderFitted(string cell)
    {
        var plain = Plain(cell);
        return plain.Length > 0 && (No.Contains(plain) || Sure.Contains(plain) || Likely.Contains(plain));
    }

    private static string Plain(string text)
    {
        var plain = new StringBuilder(text.Length);
        foreach (var character in text.Trim())
        {
            if (char.IsLetterOrDigit(character) || character is '✓' or '✔' or '●' or '×')
            {
                plain.Append(char.ToUpper(character, CultureInfo.InvariantCulture));
            }
        }
        return plain.ToString();
    }

    [GeneratedRegex(@"(?<![\p{L}\p{Nd}.])(?>[\p{L}.]+)(?!\p{Nd})")]
    private static partial Regex Token();

    [GeneratedRegex(@"[\[(]?\b(DN[PFIM]|not fitted|not populated|do not (populate|fit))\b[\])]?", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex AmongDesignators();

    [GeneratedRegex(
        @"\b(not (fitted|populated|placed|mounted)|do not (populate|fit|place|mount|install)|nicht bestückt|unbestückt|non monté|no montar)\b|不贴|未実装",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Phrase();
}
