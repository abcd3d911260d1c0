using System.Collections.Frozen;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Catalogue.Domain.Families;

namespace Catalogue.Domain.Components.Lists;

/// <summary>The designators of one part line, told apart.</summary>
/// <remarks>
/// Separators are comma, semicolon, slash, bar and blanks. A range is two designators of one prefix with a hyphen, a dash, <c>..</c>, <c>~</c>
/// or blanks round these between them; the second one may leave the prefix out (<c>BTN0-3</c>). What is no range stays a name as written.
/// </remarks>
public sealed partial class DesignatorList
{
    /// <summary>The longest range that is taken as meant, in designators.</summary>
    public const int MaxRange = 1000;

    /// <summary>The most designators of one part line.</summary>
    public const int MaxDesignators = 10_000;

    // IEEE 315 / IEC 81346 class letters and what layout programs add to them.
    private static readonly FrozenSet<string> UsualPrefixes = FrozenSet.ToFrozenSet(
    [
        "A", "AE", "ANT", "B", "BAT", "BR", "BT", "BTN", "BZ", "C", "CN", "CON", "CR", "D", "DS", "E", "F", "FB", "FD", "FL", "FU", "G", "H", "HS", "IC",
        "J", "JP", "K", "KEY",
        "L", "LD", "LED", "LS", "M", "MH", "MK", "MOV", "MP", "N", "NTC", "OK", "P", "PC", "PS", "PTC", "Q", "R", "RA", "RE", "REL", "RL", "RLY", "RN",
        "RP", "RT", "RV", "S", "SB",
        "SW", "T", "TB", "TH", "TP", "TR", "TVS", "TZ", "U", "USB", "V", "VD", "VR", "VT", "W", "X", "XTAL", "Y", "Z", "ZD",
    ], StringComparer.OrdinalIgnoreCase);

    private DesignatorList(IReadOnlyList<string> names, bool complete, IReadOnlyList<string> warnings)
    {
        Names = names;
        IsComplete = complete;
        Warnings = warnings;
    }

    /// <summary>The designators, each once, ranges expanded upwards; empty where there are none.</summary>
    public IReadOnlyList<string> Names { get; }

    /// <summary>False where a part of the text could not be told apart and is only in the text as written.</summary>
    public bool IsComplete { get; }

    /// <summary>What a person should look at, in plain words.</summary>
    public IReadOnlyList<string> Warnings { get; }

    /// <summary>Tells the designators apart.</summary>
    /// <param name="raw">The text as written; null or blank gives no names and says so.</param>
    /// <param name="quantity">
    /// The quantity the list gives, or null. It decides whether <c>U4A, U4B</c> are two parts or two units of one; without it they are units of one
    /// part only where the prefix is U or IC.
    /// </param>
    public static DesignatorList Read(string? raw, int? quantity)
    {
        if (string.IsNullOrWhiteSpace(raw))
        {
            return new DesignatorList([], true, ["no designator"]);
        }
        var warnings = new List<string>();
        var text = Fold(raw, warnings);
        var names = new List<string>();
        var seen = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        var twice = new List<string>();
        var complete = true;
        foreach (var token in Tokens(text))
        {
            var expanded = Expand(token, warnings);
            if (expanded is null || names.Count + expanded.Count > MaxDesignators)
            {
                if (expanded is not null)
                {
                    warnings.Add("too many designators: the rest is kept as written");
                }
                complete = false;
                continue;
            }
            foreach (var name in expanded)
            {
                if (seen.Add(name))
                {
                    names.Add(name);
                }
                else
                {
                    twice.Add(name);
                }
            }
        }
        if (names.Exists(name => name.Contains('_', StringComparison.Ordinal)))
        {
            warnings.Add("names with underscores were kept whole");
        }
        if (twice.Count > 0)
        {
            warnings.Add($"{string.Join(", ", twice.Distinct(StringComparer.OrdinalIgnoreCase).Take(10))} is named more than once");
        }
        if (names.Count == 0 && complete)
        {
            return new DesignatorList([], true, ["no designator"]);
        }
        return new DesignatorList(JoinUnits(names, quantity, warnings), complete, warnings);
    }

    /// <summary>True for what designators usually look like: letters, then a number.</summary>
    internal static bool LooksLikeDesignators(string text)
    {
        var tokens = SplitAtBlanks(Fold(text, []).Replace(',', ' ').Replace('-', ' '));
        return tokens.Length > 0 && (tokens.Count(token => Single().IsMatch(token)) * 2) > tokens.Length;
    }

    /// <summary>True for designators with the usual letters; unlike <see cref="LooksLikeDesignators"/> it tells them from part numbers.</summary>
    internal static bool HasUsualPrefixes(string text)
    {
        var tokens = SplitAtBlanks(Fold(text, []).Replace(',', ' ').Replace('-', ' '));
        return tokens.Length > 0 && Single().Match(tokens[0]) is { Success: true } match && UsualPrefixes.Contains(match.Groups["prefix"].Value);
    }

    [GeneratedRegex(@"^(?<prefix>[\p{L}_+]+)(?<number>[0-9]+)(?<unit>\p{L}?)$")]
    private static partial Regex Single();

    [GeneratedRegex(@"^(?<prefix>[\p{L}_+]*)(?<number>[0-9]+)(?<unit>\p{L}?)$")]
    private static partial Regex RangeEnd();

    [GeneratedRegex(@"(?<=[\p{L}0-9])[ ]?(\.\.+|-|~)[ ]?(?=[\p{L}0-9])")]
    private static partial Regex RangeMark();

    [GeneratedRegex(@"(?<=[\p{L}0-9]) (\.\.+|-|~)[ ]?(?=[\p{L}0-9])")]
    private static partial Regex SpacedDash();

    private static string Fold(string raw, List<string> warnings)
    {
        var folded = new StringBuilder(raw.Length);
        var dash = false;
        foreach (var character in raw)
        {
            var isDash = char.GetUnicodeCategory(character) == UnicodeCategory.DashPunctuation || character == '\u2212';
            dash |= isDash && character is not ('-' or '\uFF0D' or '\u301C');
            var next = character switch
            {
                '\u301C' or '\uFF5E' => '~',
                '，' or '、' or ';' or '；' or '/' or '／' or '|' or '\r' or '\n' => ',',
                '…' => '~',
                _ when isDash => '-',
                _ when char.IsWhiteSpace(character) => ' ',
                >= '\uFF01' and <= '\uFF5E' => (char)(character - 0xFEE0),
                _ => character,
            };
            if (next != ' ' || (folded.Length > 0 && folded[^1] != ' '))
            {
                folded.Append(next);
            }
        }
        if (dash)
        {
            warnings.Add("a dash that is no hyphen was read as a hyphen");
        }
        var text = folded.ToString();
        if (SpacedDash().IsMatch(text))
        {
            warnings.Add("blanks round a dash were left out");
        }
        return RangeMark().Replace(text, "-");
    }

    private static IEnumerable<string> Tokens(string text)
    {
        foreach (var group in text.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            var parts = SplitAtBlanks(group);
            // "C3 C9" are two designators, "Trafo oben" is one name.
            if (parts.Length > 1 && parts.Count(part => RangeEnd().IsMatch(part.Split('-')[0])) * 2 < parts.Length)
            {
                yield return group;
                continue;
            }
            foreach (var part in parts)
            {
                yield return part;
            }
        }
    }

    private static string[] SplitAtBlanks(string text) => text.Split(' ', StringSplitOptions.RemoveEmptyEntries);

    private static List<string>? Expand(string token, List<string> warnings)
    {
        var parts = token.Split('-');
        if (parts.Length == 1)
        {
            return [token];
        }
        var first = Single().Match(parts[0]);
        var last = RangeEnd().Match(parts[^1]);
        if (parts.Length > 2 || !first.Success || !last.Success)
        {
            // "USB-C", "TP-1": a name with a hyphen in it.
            return [token];
        }
        var prefix = first.Groups["prefix"].Value;
        var lastPrefix = last.Groups["prefix"].Value;
        if (lastPrefix.Length > 0 && !lastPrefix.Equals(prefix, StringComparison.OrdinalIgnoreCase))
        {
            warnings.Add($"the prefixes of {WellFormedText.Shorten(token, 40)} differ: no range, kept as written");
            return null;
        }
        if (lastPrefix.Length == 0)
        {
            warnings.Add($"the second half of {WellFormedText.Shorten(token, 40)} has no letters: read as a range");
        }
        return ExpandRange(token, prefix, first, last, warnings);
    }

    private static List<string>? ExpandRange(string token, string prefix, Match first, Match last, List<string> warnings)
    {
        var fromText = first.Groups["number"].Value;
        var toText = last.Groups["number"].Value;
        var units = (From: first.Groups["unit"].Value, To: last.Groups["unit"].Value);
        if (fromText == toText && units is { From.Length: 1, To.Length: 1 })
        {
            return ExpandUnits(prefix + fromText, units.From[0], units.To[0]);
        }
        if (!string.Equals(units.From, units.To, StringComparison.OrdinalIgnoreCase))
        {
            warnings.Add($"the ends of {WellFormedText.Shorten(token, 40)} do not match: no range, kept as written");
            return null;
        }
        var small = int.TryParse(fromText, NumberStyles.None, CultureInfo.InvariantCulture, out var from)
            & int.TryParse(toText, NumberStyles.None, CultureInfo.InvariantCulture, out var to);
        if (!small || Math.Abs((long)to - from) >= MaxRange)
        {
            warnings.Add($"the range {WellFormedText.Shorten(token, 40)} is too long to be meant: kept as written");
            return null;
        }
        if (to < from)
        {
            warnings.Add($"the range {token} runs backwards");
            (from, to) = (to, from);
            fromText = toText;
        }
        var digits = fromText.StartsWith('0') ? fromText.Length : 1;
        var names = new List<string>(to - from + 1);
        for (var number = from; number <= to; number++)
        {
            names.Add(prefix + number.ToString(CultureInfo.InvariantCulture).PadLeft(digits, '0') + units.From);
        }
        return names;
    }

    private static List<string> ExpandUnits(string part, char from, char to)
    {
        if (to < from)
        {
            (from, to) = (to, from);
        }
        var names = new List<string>();
        for (var unit = from; unit <= to && names.Count < MaxRange; unit++)
        {
            names.Add($"{part}{unit}");
        }
        return names;
    }

    private static List<string> JoinUnits(List<string> names, int? quantity, List<string> warnings)
    {
        if (names.Count < 2 || names.Count == quantity)
        {
            return names;
        }
        var groups = names
            .Select(name => (Name: name, Match: Single().Match(name)))
            .GroupBy(entry => entry.Match is { Success: true } match && match.Groups["unit"].Length > 0
                ? match.Groups["prefix"].Value + match.Groups["number"].Value
                : entry.Name, StringComparer.OrdinalIgnoreCase)
            .Select(group => (Part: group.Key, Units: group.Select(entry => entry.Name).ToList()))
            .ToList();
        if (groups.Count == names.Count)
        {
            return names;
        }
        var joins = quantity is { } wanted
            ? groups.Count == wanted
            : groups.TrueForAll(group => group.Units.Count == 1
                || group.Part.StartsWith('U') || group.Part.StartsWith("IC", StringComparison.Ordinal));
        if (!joins)
        {
            return names;
        }
        foreach (var (part, units) in groups.Where(group => group.Units.Count > 1))
        {
            warnings.Add($"{string.Join(", ", units.Take(10))} are units of one part, {part}");
        }
        return [.. groups.Select(group => group.Units.Count > 1 ? group.Part : group.Units[0])];
    }
}
