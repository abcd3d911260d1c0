using System.Collections.Frozen;
using System.Globalization;
using Catalogue.Domain.Families;

namespace Catalogue.Domain.Components.Lists;

/// <summary>Tells the part lines of a list from its other lines and reads them.</summary>
internal sealed class ListTable
{
    private static readonly FrozenSet<string> TotalWords = FrozenSet.ToFrozenSet(
        ["total", "totals", "subtotal", "sub total", "grand total", "sum", "summe", "gesamt", "gesamtsumme", "zwischensumme", "somme", "totaux",
        "sous total", "suma", "totales",
        "total components", "total parts", "total quantity", "anzahl gesamt", "合计", "总计", "小计", "合計", "小計", "総計"], StringComparer.OrdinalIgnoreCase);

    private const int LongestName = 60;

    private readonly ListSection _section;
    private readonly IReadOnlyList<ListLine> _lines;
    private readonly ListHeader _header;
    private readonly ListColumns _columns;
    private readonly ListWarnings _warnings;
    private readonly List<RejectedRow> _rejected = [];
    private readonly List<int> _underlines = [];

    public ListTable(ListSection section, IReadOnlyList<ListLine> lines, ListHeader header, ListWarnings warnings)
    {
        _section = section;
        _lines = lines;
        _header = header;
        _warnings = warnings;
        _columns = ListColumns.Settle(header, lines, section.Options);
        foreach (var name in section.Options.Columns?.Keys.Where(name => !_columns.All.Any(column => column.Key.Equals(name.Trim(), StringComparison.OrdinalIgnoreCase))) ?? [])
        {
            warnings.AddFile($"There is no column “{WellFormedText.Shorten(name, LongestName)}” here; what was said of it does nothing.");
        }
    }

    /// <summary>The part lines, read; null where their cells are too many to be kept.</summary>
    public ListPart? Read()
    {
        SayTitles();
        var parts = PartLines();
        _warnings.AddRows(_underlines, "underline, no part.");
        if ((long)parts.Count * _columns.All.Count > ComponentList.MaxCells)
        {
            return null;
        }
        if (parts.Count > 0)
        {
            SayNamelessColumns(parts);
            SayHiddenColumns(parts);
            SayMissingColumns();
        }
        var reader = new ListRowReader(_columns, parts, _section.Sheet);
        var rows = new List<ListRow>(parts.Count);
        foreach (var part in parts)
        {
            var row = reader.Read(part);
            foreach (var remark in row.Warnings)
            {
                _warnings.AddRow(row.LineNumber, remark);
            }
            rows.Add(row);
        }
        return new ListPart(_columns.All, rows, _rejected, reader.Readings);
    }

    private List<PartLine> PartLines()
    {
        var parts = new List<PartLine>();
        for (var i = _header.Index + _header.RowCount; i < _lines.Count; i++)
        {
            var line = _lines[i];
            if (line.TooBig is not null)
            {
                _rejected.Add(new RejectedRow(line.LineNumber, line.TooBig, _section.Sheet));
            }
            else if (IsUnderline(line))
            {
                _underlines.Add(line.LineNumber);
            }
            else if (_header.IsRepeatedBy(line))
            {
                _warnings.AddRow(line.LineNumber, "the header again, no part");
            }
            else if (IsTotal(line))
            {
                _warnings.AddRow(line.LineNumber, $"a total, no part (“{Quote(line)}”)");
            }
            else if (parts.Count > 0 && IsContinuation(line, parts[^1]))
            {
                parts[^1] = Continue(parts[^1], line);
            }
            else if (IsNote(line))
            {
                _warnings.AddRow(line.LineNumber, $"a note, no part (“{Quote(line)}”)");
            }
            else if (!NamesPart(line))
            {
                _rejected.Add(new RejectedRow(line.LineNumber, "the row names no part: no designator, value, part number or description", _section.Sheet));
            }
            else
            {
                parts.Add(Fit(line));
            }
        }
        return parts;
    }

    private static bool IsUnderline(ListLine line) =>
        line.Cells.All(cell => cell.All(character => character is '-' or '_' or '=' or '*' or '~' or '+' or ':' or '.' or ' '))
        && line.Cells.Any(cell => cell.Trim().Length >= 3);

    private bool IsTotal(ListLine line)
    {
        var first = line.Cells[FirstFilled(line)].Trim();
        if (TotalWords.Contains(first.TrimEnd(':', '：', ' ')))
        {
            return !DesignatorsLook(line) || _columns.First(ColumnMeaning.Designators) == FirstFilled(line);
        }
        // "Total parts: 41" and its like: a total word, then more, in a line without designators.
        var word = first.Split(' ', ':', '：')[0];
        return _columns.Has(ColumnMeaning.Designators) && word.Length < first.Length && TotalWords.Contains(word) && !DesignatorsLook(line)
            && first.Any(character => character is ':' or '：' || char.IsAsciiDigit(character));
    }

    private bool IsContinuation(ListLine line, PartLine previous)
    {
        var column = _columns.First(ColumnMeaning.Designators);
        if (column < 0 || Filled(line) != 1 || line.Cell(column).Trim().Length == 0 || _columns.All.Count < 2)
        {
            return false;
        }
        var before = previous.Cells[column].TrimEnd();
        return before.Length > 0 && before[^1] is ',' or ';' or '/' or '，' or '、' or '-';
    }

    private PartLine Continue(PartLine part, ListLine line)
    {
        var column = _columns.First(ColumnMeaning.Designators);
        var cells = (string[])part.Cells.Clone();
        cells[column] = $"{cells[column]}\n{line.Cell(column)}";
        return part with
        {
            Cells = cells,
            Remarks = [.. part.Remarks, string.Create(CultureInfo.InvariantCulture, $"goes on in line {line.LineNumber}, which was joined to it")],
        };
    }

    /// <summary>Summary lines (“Component count: 11”), headings and remarks between the rows.</summary>
    private bool IsNote(ListLine line)
    {
        if (_columns.All.Count < 3)
        {
            return false;
        }
        var column = FirstFilled(line);
        var first = line.Cells[column].Trim();
        var filled = Filled(line);
        if (filled <= 2 && (first.EndsWith(':') || first.EndsWith('：')) && !DesignatorsLook(line))
        {
            return true;
        }
        // One text alone in the first place, or in a line without its running number: a heading.
        var leads = column == 0 || (_columns.Has(ColumnMeaning.RunningNumber) && column <= 1);
        return filled == 1 && leads && _columns.Meaning(column) switch
        {
            ColumnMeaning.Designators => !DesignatorsLook(line),
            ColumnMeaning.RunningNumber => !first.All(char.IsAsciiDigit),
            _ => _columns.Has(ColumnMeaning.Quantity) || _columns.Has(ColumnMeaning.Designators),
        };
    }

    private bool NamesPart(ListLine line)
    {
        for (var i = 0; i < line.Cells.Length; i++)
        {
            if (!string.IsNullOrWhiteSpace(line.Cells[i]) && _columns.Meaning(i) is ColumnMeaning.Designators or ColumnMeaning.Value or ColumnMeaning.PartNumber
                or ColumnMeaning.Description or ColumnMeaning.SupplierPartNumber or ColumnMeaning.Package or ColumnMeaning.Role)
            {
                return true;
            }
        }
        return false;
    }

    private bool DesignatorsLook(ListLine line)
    {
        var column = _columns.First(ColumnMeaning.Designators);
        return column >= 0 && DesignatorList.LooksLikeDesignators(line.Cell(column));
    }

    private static int Filled(ListLine line) => line.Cells.Count(cell => !string.IsNullOrWhiteSpace(cell));

    private static int FirstFilled(ListLine line) => Array.FindIndex(line.Cells, cell => !string.IsNullOrWhiteSpace(cell));

    /// <summary>Brings a line to the header's number of fields, and says how.</summary>
    private PartLine Fit(ListLine line)
    {
        var width = _columns.All.Count;
        var remarks = new List<string>();
        if (line.IsHidden)
        {
            remarks.Add("hidden in the workbook, imported all the same");
        }
        if (line.OpenQuote)
        {
            remarks.Add("a quotation mark opens a field and is never closed: taken as text");
        }
        else if (line.BareQuote)
        {
            remarks.Add("a quotation mark inside a field was taken as text");
        }
        if (line.FieldCount < width)
        {
            remarks.Add(string.Create(
                CultureInfo.InvariantCulture,
                $"{line.FieldCount} field{(line.FieldCount == 1 ? "" : "s")} where the header has {width}: what is missing was taken as empty"));
        }
        var cells = line.Cells;
        if (cells.Length > width)
        {
            var mended = _section.Delimiter is { } delimiter ? ShiftedRow.Mend(cells, width, delimiter, _columns) : null;
            remarks.Add(mended is null
                ? string.Create(CultureInfo.InvariantCulture, $"{cells.Length} fields where the header has {width}: what is too many was kept as read")
                : string.Create(
                    CultureInfo.InvariantCulture,
                    $"{cells.Length} fields where the header has {width}: "
                    + $"put right by joining “{mended.Value.Joined}” in column {_columns.All[mended.Value.Column].Key}"));
            cells = mended?.Cells ?? cells;
        }
        var padded = new string[Math.Max(width, cells.Length)];
        Array.Fill(padded, "");
        cells.CopyTo(padded, 0);
        return new PartLine(line.LineNumber, padded, remarks, line);
    }

    private void SayTitles()
    {
        foreach (var line in _lines.Take(_header.Index))
        {
            _warnings.AddFile(string.Create(CultureInfo.InvariantCulture, $"Line {line.LineNumber} above the header is a title, no part: “{Quote(line)}”."));
        }
        if (_header.RowCount == 2)
        {
            var (first, second) = (_lines[_header.Index].LineNumber, _lines[_header.Index + 1].LineNumber);
            _warnings.AddFile(string.Create(
                CultureInfo.InvariantCulture,
                $"Lines {first} and {second} are one header of two rows; the names of both were joined."));
        }
    }

    private void SayNamelessColumns(List<PartLine> parts)
    {
        var nameless = Enumerable.Range(0, _columns.All.Count).Where(column => _columns.All[column].Header.Length == 0).ToList();
        var (empty, filled) = (new List<int>(), new List<int>());
        foreach (var column in nameless)
        {
            (parts.Exists(part => part.Cells[column].Length > 0) ? filled : empty).Add(column + 1);
        }
        if (empty.Count > 0)
        {
            _warnings.AddFile($"Columns without a name and without content: {Numbers(empty)}.");
        }
        if (filled.Count > 0)
        {
            _warnings.AddFile($"Columns without a name, kept as read: {Numbers(filled)}.");
        }

        static string Numbers(List<int> columns) => string.Join(", ", columns.Select(column => column.ToString(CultureInfo.InvariantCulture)));
    }

    private void SayHiddenColumns(List<PartLine> parts)
    {
        foreach (var column in _section.HiddenColumns.Where(column => column < _columns.All.Count && parts.Exists(part => part.Cells[column].Length > 0)))
        {
            _warnings.AddFile($"Column {_columns.All[column].Key} is hidden in the workbook; it was read all the same.");
        }
    }

    private void SayMissingColumns()
    {
        if (!_columns.Has(ColumnMeaning.Quantity))
        {
            _warnings.AddFile(_columns.Has(ColumnMeaning.Designators)
                ? "There is no quantity column: quantities were counted from the designators."
                : "There is no quantity column and no designator column: 1 was taken for each row.");
        }
    }

    private static string Quote(ListLine line)
    {
        const int Longest = 120;
        var text = string.Join(" ", line.Cells.Select(cell => cell.Trim()).Where(cell => cell.Length > 0)).ReplaceLineEndings(" ");
        return WellFormedText.Shorten(text, Longest);
    }
}
