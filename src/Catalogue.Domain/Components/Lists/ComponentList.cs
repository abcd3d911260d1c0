using System.Globalization;
using Catalogue.Domain.Families;

namespace Catalogue.Domain.Components.Lists;

/// <summary>
/// Reads a component list (bill of materials) as labs have them: any usual encoding and separator, title lines, one or two header rows,
/// headers in six languages, totals, notes, damage.
/// </summary>
/// <remarks>
/// Never throws on content and takes time linear in its size. Nothing is dropped without a word: part lines are taken over or rejected with
/// a reason, all other lines are named in the warnings. Why this is no library: decision 0004.
/// </remarks>
public static class ComponentList
{
    /// <summary>The largest file that is read, in bytes.</summary>
    public const int MaxFileBytes = 32 * 1024 * 1024;

    /// <summary>The most lines with content.</summary>
    public const int MaxRows = 100_000;

    /// <summary>The most cells, rows by columns.</summary>
    public const int MaxCells = 2_000_000;

    /// <summary>The most columns.</summary>
    public const int MaxColumns = 500;

    /// <summary>The longest cell, in UTF-16 code units.</summary>
    public const int MaxCellCharacters = 32_768;

    private const int ProbeCharacters = 1 << 17;
    private const int ProbeLines = 200;
    private const int MostNamed = 20;
    private const int LongestName = 60;

    private static readonly char[] Delimiters = [',', ';', '\t', '|'];

    /// <summary>Reads the list.</summary>
    /// <param name="content">The file's bytes.</param>
    /// <param name="fileName">Its name, only to say where it contradicts the content; null where unknown.</param>
    /// <param name="options">What a person decided; null to find everything out.</param>
    public static ComponentListReading Read(ReadOnlyMemory<byte> content, string? fileName, ComponentListOptions? options = null)
    {
        if (content.IsEmpty)
        {
            return new ComponentListReading.Refused("The file is empty.");
        }
        if (content.Length > MaxFileBytes)
        {
            return new ComponentListReading.Refused($"The file is larger than {MaxFileBytes / (1024 * 1024)} MiB.");
        }
        var (text, refusal) = ListText.Decode(content.Span, options?.Encoding);
        if (text is null)
        {
            return new ComponentListReading.Refused(refusal!);
        }
        if (string.IsNullOrWhiteSpace(text.Text))
        {
            return new ComponentListReading.Refused("The file holds nothing but blanks.");
        }
        if (options?.Sheet is not null)
        {
            return new ComponentListReading.Refused("A sheet was named, but the content is text and has none.");
        }
        if (options?.Delimiter is { } wanted && !CanSeparate(wanted))
        {
            return new ComponentListReading.Refused("A letter, a digit, a quotation mark or a control character other than the tab cannot be the separator.");
        }
        if (options?.Delimiter is null && ReadMarkdown(text, options ?? new()) is { } markdown)
        {
            return markdown;
        }
        var delimiter = options?.Delimiter ?? FindDelimiter(text.Text);
        var lines = new List<ListLine>();
        var blank = new List<int>();
        foreach (var line in DelimitedText.Lines(text.Text, delimiter))
        {
            if (!line.IsBlank)
            {
                lines.Add(line);
            }
            else if (blank.Count <= ListWarnings.NamedRows)
            {
                blank.Add(line.LineNumber);
            }
            if (lines.Count > MaxRows)
            {
                return new ComponentListReading.Refused(string.Create(CultureInfo.InvariantCulture, $"The list has more than {MaxRows} rows."));
            }
        }
        var warnings = new ListWarnings();
        warnings.AddFile(text.Warnings);
        NameAgainstContent(fileName, delimiter, warnings);
        var (part, reason) = new ListSection([.. lines], blank) { Delimiter = delimiter, Options = options ?? new() }.Read(warnings);
        return part is null
            ? new ComponentListReading.Refused(reason!)
            : Done(part, warnings.All()) with { Encoding = text.Encoding, Delimiter = delimiter };
    }

    /// <summary>Reads the tables of a Markdown text that have a header; null where there is none of these, or the header is said to be outside of them.</summary>
    private static ComponentListReading? ReadMarkdown(ListText text, ComponentListOptions options)
    {
        var (tables, outside) = MarkdownTables.Find(text.Text);
        bool Holds(ListSection table) => Array.Exists(table.Lines, line => line.LineNumber == options.HeaderLine);
        if (!tables.Any(table => options.HeaderLine is null ? ListHeader.Find(table.Lines) is not null : Holds(table)))
        {
            return null;
        }
        if (tables.Sum(table => table.Lines.Length) > MaxRows)
        {
            return new ComponentListReading.Refused(string.Create(CultureInfo.InvariantCulture, $"The tables have more than {MaxRows} rows."));
        }
        var warnings = new ListWarnings();
        warnings.AddFile(text.Warnings);
        warnings.AddRows(outside, "text outside of the tables, no part.");
        var (parts, refusals) = (new List<ListPart>(), new List<string>());
        foreach (var table in tables)
        {
            var (part, reason) = (table with { Options = Holds(table) ? options : options with { HeaderLine = null } }).Read(warnings);
            if (part is null)
            {
                refusals.Add(string.Create(CultureInfo.InvariantCulture, $"The table in line {table.Lines[0].LineNumber} was not imported: {reason}"));
            }
            else
            {
                parts.Add(part);
            }
        }
        if (parts.Count == 0)
        {
            return new ComponentListReading.Refused(string.Join(" ", refusals.Take(MostNamed)));
        }
        warnings.AddFile(refusals);
        return Done(ListPart.Join(parts), warnings.All()) with { Encoding = text.Encoding, Delimiter = '|' };
    }

    /// <summary>Reads the sheets of a workbook: the one that was asked for, else every visible one that has a header and part lines.</summary>
    /// <param name="sheets">The sheets in the workbook's order.</param>
    /// <param name="options">What a person decided; null to find everything out.</param>
    public static ComponentListReading Read(IReadOnlyList<ListGrid> sheets, ComponentListOptions? options = null)
    {
        if (options?.Sheet is { } wanted && !sheets.Any(sheet => IsNamed(sheet, wanted)))
        {
            return new ComponentListReading.Refused($"There is no sheet “{WellFormedText.Shorten(wanted, LongestName)}”; there are {Names(sheets)}.");
        }
        var (parts, done, said) = (new List<ListPart>(), new List<ListSheet>(), new List<string>());
        foreach (var sheet in sheets)
        {
            var warnings = new ListWarnings(sheet.Name);
            var (part, refusal) = sheet.Rows.Count == 0 ? (null, "The sheet is empty.") : (GridLines.Of(sheet, warnings) with { Options = options ?? new() }).Read(warnings);
            var notAsked = options?.Sheet is { } name
                ? IsNamed(sheet, name) ? null : "Another sheet was asked for."
                : sheet.IsHidden ? "The sheet is hidden; it is imported when it is asked for by name." : null;
            var reason = notAsked ?? refusal;
            done.Add(new ListSheet(sheet.Name, part?.Count ?? 0, sheet.IsHidden, reason));
            if (reason is null)
            {
                parts.Add(part!);
                said.AddRange(warnings.All());
            }
            else if (options?.Sheet is null)
            {
                said.Add($"Sheet “{sheet.Name}” was not imported: {char.ToLowerInvariant(reason[0])}{reason[1..]}");
            }
        }
        var all = ListPart.Join(parts);
        if (all.Count == 0)
        {
            return new ComponentListReading.Refused(string.Join(" ", done.Where(sheet => sheet.NotImported is not null).Take(MostNamed).Select(sheet => $"“{sheet.Name}”: {sheet.NotImported}").DefaultIfEmpty("The workbook has no sheets.")));
        }
        return all.Rows.Count > MaxRows
            ? new ComponentListReading.Refused(string.Create(CultureInfo.InvariantCulture, $"The sheets have more than {MaxRows} rows."))
            : Done(all, said) with { Sheets = done };
    }

    private static ComponentListReading.Read Done(ListPart part, IReadOnlyList<string> warnings) =>
        new() { Columns = part.Columns, Rows = part.Rows, Rejected = part.Rejected, Readings = part.Readings, Warnings = warnings };

    private static bool IsNamed(ListGrid sheet, string name) => sheet.Name.Trim().Equals(name.Trim(), StringComparison.OrdinalIgnoreCase);

    private static string Names(IReadOnlyList<ListGrid> sheets) =>
        string.Join(", ", sheets.Take(MostNamed).Select(sheet => $"“{WellFormedText.Shorten(sheet.Name, LongestName)}”")) + (sheets.Count > MostNamed ? " and more" : "");

    private static bool CanSeparate(char wanted) =>
        wanted == '\t' || !(wanted == '"' || char.IsLetterOrDigit(wanted) || char.IsSurrogate(wanted) || char.IsControl(wanted));

    private static char FindDelimiter(string text)
    {
        var probe = WellFormedText.Start(text, ProbeCharacters);
        var (best, bestScore) = (Delimiters[0], -1.0);
        foreach (var candidate in Delimiters)
        {
            var lines = DelimitedText.Lines(probe, candidate).Where(line => !line.IsBlank).Take(ProbeLines).ToList();
            // Recognised headers weigh most; among equals, the separator that cuts the lines into like numbers of fields.
            var score = ListHeader.Find(lines) is { } header ? (header.Score * 10) + Steadiness(lines, header) : -1;
            if (score > bestScore)
            {
                (best, bestScore) = (candidate, score);
            }
        }
        return best;
    }

    private static double Steadiness(List<ListLine> lines, ListHeader header) =>
        lines.Skip(header.Index + 1).Select(line => line.FieldCount == header.FieldCount ? 1.0 : 0.0).DefaultIfEmpty(0).Average();

    private static void NameAgainstContent(string? fileName, char delimiter, ListWarnings warnings)
    {
        var named = fileName is null ? '\0'
            : fileName.EndsWith(".tsv", StringComparison.OrdinalIgnoreCase) || fileName.EndsWith(".tab", StringComparison.OrdinalIgnoreCase) ? '\t'
            : fileName.EndsWith(".csv", StringComparison.OrdinalIgnoreCase) && delimiter == '\t' ? ','
            : '\0';
        if (named != '\0' && named != delimiter)
        {
            warnings.AddFile($"The file's name says {Name(named)}, its content is separated by {Name(delimiter)}: the content decides.");
        }

        static string Name(char separator) => separator switch
        {
            '\t' => "tabs",
            ',' => "commas",
            ';' => "semicolons",
            '|' => "bars",
            _ => $"“{separator}”",
        };
    }
}
