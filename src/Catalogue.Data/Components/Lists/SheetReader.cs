using System.Globalization;
using System.Xml;
using Catalogue.Domain.Components.Lists;
using DocumentFormat.OpenXml.Packaging;

namespace Catalogue.Data.Components.Lists;

/// <summary>Streams the sheets of one workbook.</summary>
/// <param name="texts">The texts that cells name by number.</param>
/// <param name="styles">How numbers are shown.</param>
internal sealed class SheetReader(List<string> texts, CellStyles styles)
{
    private const int LastRow = 1_048_576;
    private const int LastColumn = 16_384;
    private const int MostMerged = 10_000;

    private readonly CellTexts _cells = new(styles);
    private long _characters;
    private int _filled;
    private int _rows;

    public ListGrid Read(string name, WorksheetPart part)
    {
        var (rows, merged, hidden) = (new List<GridRow>(), new List<GridSpan>(), new SortedSet<int>());
        using var xml = WorkbookXml.Open(part);
        xml.MoveToContent();
        xml.Read();
        while (!xml.EOF)
        {
            if (xml.NodeType != XmlNodeType.Element)
            {
                xml.Read();
                continue;
            }

            switch (xml.LocalName)
            {
                case "cols" or "sheetData" or "mergeCells":
                    xml.Read();
                    break;
                case "col":
                    AddHidden(xml, hidden);
                    xml.Skip();
                    break;
                case "row":
                    ReadRow(xml, rows);
                    break;
                case "mergeCell":
                    if (merged.Count < MostMerged && Span(xml.GetAttribute("ref")) is { } span)
                        merged.Add(span);
                    xml.Skip();
                    break;
                default:
                    xml.Skip();
                    break;
            }
        }

        return new ListGrid(name, rows) { HiddenColumns = [.. hidden], Merged = merged };
    }

    private static void AddHidden(XmlReader xml, SortedSet<int> hidden)
    {
        if (!IsTrue(xml.GetAttribute("hidden")) || Whole(xml.GetAttribute("min")) is not { } from || Whole(xml.GetAttribute("max")) is not { } to)
            return;
        for (var column = Math.Max(from, 1); column <= Math.Min(to, ComponentList.MaxColumns); column++)
            hidden.Add(column - 1);
    }

    private void ReadRow(XmlReader xml, List<GridRow> rows)
    {
        var last = rows is [.., var before] ? before.Number : 0;
        var number = xml.GetAttribute("r") is { } written ? Whole(written) ?? 0 : last + 1;
        if (number <= last || number > LastRow)
            throw new WorkbookRefusedException("The rows of a sheet are out of order: the workbook is damaged. Open it in a spreadsheet program and save it anew.");
        var isHidden = IsTrue(xml.GetAttribute("hidden"));
        var (cells, doubts, next, beyond) = (new List<string>(), new List<CellDoubt>(), 0, 0);
        if (!xml.IsEmptyElement)
        {
            var depth = xml.Depth;
            xml.Read();
            while (xml.Depth > depth && !xml.EOF)
            {
                if (xml.NodeType != XmlNodeType.Element || xml.LocalName != "c")
                {
                    xml.Skip();
                    continue;
                }

                var column = Column(xml.GetAttribute("r")) ?? next;
                next = column + 1;
                var (text, doubt) = ReadCell(xml, column);
                if (text.Length == 0 && doubt is null)
                    continue;
                if (column >= ComponentList.MaxColumns)
                {
                    beyond = column + 1;
                    continue;
                }

                while (cells.Count <= column)
                    cells.Add("");
                cells[column] = text;
                if (doubt is not null)
                    doubts.Add(doubt);
                if ((_characters += text.Length) > Workbook.MaxCharacters)
                    throw WorkbookRefusedException.TooMuchText();
                if (++_filled > ComponentList.MaxCells)
                    throw new WorkbookRefusedException($"The workbook has more than {ComponentList.MaxCells} cells.");
            }
        }

        xml.Read();
        if (cells.Count == 0 && beyond == 0)
            return;
        if (++_rows > ComponentList.MaxRows)
            throw new WorkbookRefusedException($"The workbook has more than {ComponentList.MaxRows} rows.");
        rows.Add(new GridRow(number, cells)
        {
            Doubts = doubts,
            IsHidden = isHidden,
            TooBig = beyond == 0 ? null : $"the row reaches to column {beyond}; at most {ComponentList.MaxColumns} are read",
        });
    }

    private (string Text, CellDoubt? Doubt) ReadCell(XmlReader xml, int column)
    {
        var (type, style) = (xml.GetAttribute("t"), Whole(xml.GetAttribute("s")) ?? 0);
        string? formula = null, value = null, inline = null;
        if (!xml.IsEmptyElement)
        {
            var depth = xml.Depth;
            xml.Read();
            while (xml.Depth > depth && !xml.EOF)
            {
                switch (xml.NodeType == XmlNodeType.Element ? xml.LocalName : "")
                {
                    case "f":
                        formula = xml.ReadElementContentAsString();
                        break;
                    case "v":
                        value = xml.ReadElementContentAsString();
                        break;
                    case "is":
                        inline = WorkbookXml.ReadItem(xml);
                        xml.Read();
                        break;
                    default:
                        xml.Skip();
                        break;
                }
            }
        }

        xml.Read();
        if (type == "inlineStr")
            return (inline ?? "", null);
        if (string.IsNullOrEmpty(value))
            return ("", formula is null ? null : new CellDoubt.NoStoredResult(column, formula.Trim()));
        return type switch
        {
            "s" => (Whole(value) is { } index && index >= 0 && index < texts.Count
                ? texts[index]
                : throw new WorkbookRefusedException("A cell names a text that the workbook does not hold: it is damaged. Open it in a spreadsheet program and save it anew."), null),
            "str" => (WorkbookXml.Unescape(value), null),
            "b" => (IsTrue(value) ? "TRUE" : "FALSE", null),
            "e" => (value, null),
            "d" => _cells.OfDate(value, column, styles.Code(style)),
            _ => _cells.OfNumber(value, column, style),
        };
    }

    private static GridSpan? Span(string? reference)
    {
        var ends = reference?.Split(':') ?? [];
        return ends is [var from, var to] && Column(from) is { } left && Column(to) is { } right && RowOf(from) is { } top && RowOf(to) is { } bottom && left <= right && top <= bottom
            ? new GridSpan(top, left, bottom, right)
            : null;
    }

    private static int? RowOf(string reference) => Whole(reference.TrimStart([.. "ABCDEFGHIJKLMNOPQRSTUVWXYZ"])) is { } row and >= 1 and <= LastRow ? row : null;

    /// <summary>The column of a reference such as <c>AB12</c>, from 0; null where there is none.</summary>
    private static int? Column(string? reference)
    {
        var column = 0;
        foreach (var letter in (reference ?? "").TakeWhile(char.IsAsciiLetterUpper).Take(4))
            column = (column * 26) + letter - 'A' + 1;
        return column is 0 or > LastColumn ? null : column - 1;
    }

    private static bool IsTrue(string? value) => value is "1" or "true";

    private static int? Whole(string? value) => int.TryParse(value, NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite, CultureInfo.InvariantCulture, out var number) ? number : null;
}
