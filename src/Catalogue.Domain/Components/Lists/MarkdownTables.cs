using System.Net;
using System.Text;
using System.Text.RegularExpressions;

namespace Catalogue.Domain.Components.Lists;

/// <summary>Tables in Markdown, also inside other text.</summary>
/// <remarks>Source: GitHub Flavored Markdown, 4.10 Tables. More lenient: header and alignment row may differ in their number of cells.</remarks>
internal static partial class MarkdownTables
{
    /// <summary>The tables in order, and the numbers of the lines with text outside of them.</summary>
    public static (IReadOnlyList<ListSection> Tables, IReadOnlyList<int> Outside) Find(string text)
    {
        var (tables, outside, lines) = (new List<ListSection>(), new List<int>(), new List<string>());
        if (!text.Contains("--", StringComparison.Ordinal) && !text.Contains("-|", StringComparison.Ordinal) && !text.Contains(":|", StringComparison.Ordinal))
        {
            return (tables, outside);
        }
        foreach (var line in text.AsSpan().EnumerateLines())
        {
            lines.Add(line.ToString());
        }
        for (var i = 0; i < lines.Count; i++)
        {
            if (i + 1 < lines.Count && lines[i].Contains('|', StringComparison.Ordinal) && IsAlignment(lines[i + 1]))
            {
                var end = i + 2;
                while (end < lines.Count && !EndsTable(lines[end]))
                {
                    end++;
                }
                var rows = Enumerable.Range(i, end - i).Where(number => number != i + 1).Select(number => Row(lines[number], number + 1));
                tables.Add(new ListSection([.. rows.Where(row => !row.IsBlank)], []) { Delimiter = '|' });
                i = end - 1;
            }
            else if (!string.IsNullOrWhiteSpace(lines[i]))
            {
                outside.Add(i + 1);
            }
        }
        return (tables, outside);
    }

    /// <summary>The text of a cell that is nothing but a link (<c>[text](address)</c>); any other text as it is.</summary>
    public static string WithoutLink(string cell) => cell.StartsWith('[') && Link().Match(cell) is { Success: true } link ? link.Groups["text"].Value.Trim() : cell;

    private static bool IsAlignment(string line)
    {
        if (!line.Contains('|', StringComparison.Ordinal) || line.AsSpan().IndexOfAnyExcept("|:- \t") >= 0)
        {
            return false;
        }
        return line.Trim().Trim('|').Split('|').All(cell => cell.Trim() is { Length: > 0 } marks && marks.Trim(':') is { Length: > 0 } dashes && dashes.All(mark => mark == '-'));
    }

    private static bool EndsTable(string line)
    {
        var start = line.TrimStart();
        return start.Length == 0 || (start[0] is '#' or '>' or '`' or '~' && !line.Contains('|', StringComparison.Ordinal));
    }

    private static ListLine Row(string line, int number)
    {
        var inner = line.AsSpan().Trim();
        inner = inner.StartsWith("|") ? inner[1..] : inner;
        var (cells, cell, escaped) = (new List<string>(), new StringBuilder(), false);
        var fields = 0;
        foreach (var character in inner)
        {
            if (character == '|' && !escaped)
            {
                Add();
            }
            else
            {
                // The bar loses its backslash here, whatever it stands in; other escapes are undone with the markup.
                cell.Length -= character == '|' ? 1 : 0;
                cell.Append(character);
            }
            escaped = character == '\\' && !escaped;
        }
        if (!cell.ToString().AsSpan().Trim().IsEmpty || cells.Count == 0)
        {
            Add();
        }
        var last = cells.FindLastIndex(text => text.Length > 0);
        string? tooBig = fields > ComponentList.MaxColumns
            ? FormattableString.Invariant($"the row has {fields} fields; at most {ComponentList.MaxColumns} are read")
            : cells.Exists(text => text.Length > ComponentList.MaxCellCharacters) ? FormattableString.Invariant($"a cell has more than {ComponentList.MaxCellCharacters} characters") : null;
        return new ListLine(number, tooBig is null ? [.. cells[..(last + 1)]] : [], fields, tooBig, false, false);

        void Add()
        {
            if (++fields <= ComponentList.MaxColumns)
            {
                cells.Add(Plain(cell.ToString().Trim()));
            }
            cell.Clear();
        }
    }

    /// <summary>The cell's text without the markup round the whole of it, without escapes and entities.</summary>
    private static string Plain(string cell)
    {
        foreach (var mark in (ReadOnlySpan<string>)["`", "**", "__", "*", "_"])
        {
            if (cell.Length > 2 * mark.Length && cell.StartsWith(mark, StringComparison.Ordinal) && cell.EndsWith(mark, StringComparison.Ordinal)
                && !cell.AsSpan(mark.Length, cell.Length - (2 * mark.Length)).Contains(mark[0]))
            {
                cell = cell[mark.Length..^mark.Length];
                if (mark == "`")
                {
                    return cell.Trim();
                }
            }
        }
        cell = Break().Replace(cell, "\n");
        return WebUtility.HtmlDecode(Escaped().Replace(cell, "$1"));
    }

    [GeneratedRegex(@"^\[(?<text>[^\[\]]+)\]\([^()]*(\([^()]*\)[^()]*)?\)$")]
    private static partial Regex Link();

    [GeneratedRegex(@"[ ]?<br\s?/?>[ ]?", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Break();

    // Every ASCII mark may be escaped (CommonMark, 2.4).
    [GeneratedRegex(@"\\([!-/:-@\[-`{-~])")]
    private static partial Regex Escaped();
}
