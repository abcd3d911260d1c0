using System.Globalization;

namespace Catalogue.Domain.Articles;

/// <summary>
/// The block of keys and values between two lines of three hyphens at the start of a text, in the part of YAML 1.2 that people write there: plain and
/// quoted values, lists on one line or below each other, comments. What is not read is said and never guessed.
/// </summary>
public sealed class FrontMatter
{
    /// <summary>The most keys.</summary>
    public const int MaxKeys = 100;

    private static readonly char[] LineBreak = ['\n'];

    private readonly Dictionary<string, IReadOnlyList<string>> _values;

    private FrontMatter(Dictionary<string, IReadOnlyList<string>> values, int bodyStart, IReadOnlyList<string> warnings)
    {
        _values = values;
        BodyStart = bodyStart;
        Warnings = warnings;
    }

    /// <summary>Where the text after the block starts; 0 where there is no block.</summary>
    public int BodyStart { get; }

    /// <summary>What was not read.</summary>
    public IReadOnlyList<string> Warnings { get; }

    /// <summary>The keys, lower case, in order.</summary>
    public IEnumerable<string> Keys => _values.Keys;

    /// <summary>The value of a key, or its first one where it is a list; null where there is none or it is blank.</summary>
    public string? Value(string key) => _values.GetValueOrDefault(key) is [var first, ..] && first.Length > 0 ? first : null;

    /// <summary>All values of a key; empty where there is none.</summary>
    public IReadOnlyList<string> Values(string key) => _values.GetValueOrDefault(key) ?? [];

    /// <summary>Reads the block of a text; without one there are no keys.</summary>
    public static FrontMatter Of(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var lines = text.Split(LineBreak);
        if (lines[0].TrimEnd() != "---")
            return new FrontMatter([], 0, []);
        var end = Array.FindIndex(lines, 1, line => line.TrimEnd() is "---" or "...");
        if (end < 0)
            return new FrontMatter([], 0, ["The first line opens a block of keys that is never closed; it was taken as text."]);
        var warnings = new List<string>();
        var values = Read(lines[1..end], warnings);
        return new FrontMatter(values, Math.Min(text.Length, lines[..(end + 1)].Sum(line => line.Length + 1)), warnings);
    }

    private static Dictionary<string, IReadOnlyList<string>> Read(string[] lines, List<string> warnings)
    {
        var values = new Dictionary<string, IReadOnlyList<string>>(StringComparer.Ordinal);
        string? open = null;
        for (var i = 0; i < lines.Length; i++)
        {
            var line = lines[i].TrimEnd();
            if (line.Length == 0 || line.TrimStart().StartsWith('#'))
                continue;
            if (open is not null && line.TrimStart() is ['-', ' ', .. var item])
            {
                values[open] = [.. values[open], Plain(item)];
                continue;
            }

            var colon = line.IndexOf(':', StringComparison.Ordinal);
            if (char.IsWhiteSpace(line[0]) || colon <= 0 || (colon + 1 < line.Length && line[colon + 1] != ' '))
            {
                warnings.Add(string.Create(CultureInfo.InvariantCulture, $"Line {i + 2} of the block of keys was not read: “{Families.WellFormedText.Shorten(line.Trim(), 80)}”."));
                open = null;
                continue;
            }

            var key = line[..colon].Trim().ToLowerInvariant();
            var value = line[(colon + 1)..].Trim();
            open = null;
            if (values.ContainsKey(key) || values.Count == MaxKeys)
                warnings.Add(values.Count == MaxKeys ? $"There are more than {MaxKeys} keys; the others were not read." : $"The key “{key}” stands there twice; the first one counts.");
            else if (value is "|" or ">" or "|-" or ">-")
                warnings.Add($"The key “{key}” holds lines of text, which are not read.");
            else
            {
                values[key] = value.Length == 0 ? [] : value is ['[', .., ']'] ? Items(value[1..^1]) : [Plain(value)];
                open = value.Length == 0 ? key : null;
            }

            if (values.Count == MaxKeys)
                break;
        }

        return values;
    }

    private static List<string> Items(string list)
    {
        var items = new List<string>();
        var start = 0;
        var quote = '\0';
        for (var i = 0; i <= list.Length; i++)
        {
            if (i == list.Length || (quote == '\0' && list[i] == ','))
            {
                items.Add(Plain(list[start..i]));
                start = i + 1;
            }
            else if (quote != '\0' ? list[i] == quote : list[i] is '"' or '\'' && string.IsNullOrWhiteSpace(list[start..i]))
            {
                quote = quote == '\0' ? list[i] : '\0';
            }
        }

        return [.. items.Where(item => item.Length > 0)];
    }

    // Without quotation marks around it, or without the comment behind it.
    private static string Plain(string value)
    {
        var text = value.Trim();
        if (text.Length > 1 && text[0] is '"' or '\'' && text.IndexOf(text[0], 1) is var close and > 0)
        {
            var last = text.LastIndexOf(text[0]);
            var inner = text[1..(text[(last + 1)..].TrimStart() is "" or ['#', ..] ? last : close)];
            return text[0] == '\'' ? inner.Replace("''", "'", StringComparison.Ordinal) : inner.Replace("\\\"", "\"", StringComparison.Ordinal).Replace("\\\\", "\\", StringComparison.Ordinal);
        }

        var comment = text.IndexOf(" #", StringComparison.Ordinal);
        var plain = (comment < 0 ? text : text[..comment]).Trim();
        return plain is "~" or "null" ? "" : plain;
    }
}
