using System.Globalization;
using System.Text;

namespace Catalogue.Testing.Components.Lists;

/// <summary>Makes one sheet of a workbook.</summary>
public sealed class SheetBuilder
{
    private readonly WorkbookBuilder _book;
    private readonly StringBuilder _rows = new();
    private readonly List<string> _merged = [];
    private string _columns = "";
    private int _row;

    internal SheetBuilder(WorkbookBuilder book, string name, bool hidden)
    {
        _book = book;
        Name = name;
        IsHidden = hidden;
    }

    /// <summary>The sheet's name.</summary>
    public string Name { get; }

    /// <summary>True where the workbook does not show the sheet.</summary>
    public bool IsHidden { get; }

    /// <summary>Adds the next row.</summary>
    public SheetBuilder Row(params object?[] cells) => Add(false, cells);

    /// <summary>Adds the next row, which the sheet does not show.</summary>
    public SheetBuilder HiddenRow(params object?[] cells) => Add(true, cells);

    /// <summary>Leaves rows out.</summary>
    public SheetBuilder Skip(int rows = 1)
    {
        _row += rows;
        return this;
    }

    /// <summary>Merges cells, such as <c>A6:A7</c>.</summary>
    public SheetBuilder Merge(string cells)
    {
        _merged.Add(cells);
        return this;
    }

    /// <summary>Hides a column, counted from 1.</summary>
    public SheetBuilder HideColumn(int column)
    {
        _columns += string.Create(CultureInfo.InvariantCulture, $"<col min=\"{column}\" max=\"{column}\" hidden=\"1\"/>");
        return this;
    }

    internal string Xml(string main) =>
        $"<worksheet xmlns=\"{main}\">{(_columns.Length > 0 ? $"<cols>{_columns}</cols>" : "")}<sheetData>{_rows}</sheetData>"
        + (_merged.Count > 0 ? $"<mergeCells>{string.Concat(_merged.Select(cells => $"<mergeCell ref=\"{cells}\"/>"))}</mergeCells>" : "") + "</worksheet>";

    private SheetBuilder Add(bool hidden, object?[] cells)
    {
        _row++;
        _rows.Append(CultureInfo.InvariantCulture, $"<row r=\"{_row}\"{(hidden ? " hidden=\"1\"" : "")}>");
        for (var i = 0; i < cells.Length; i++)
        {
            if (cells[i] is { } cell)
                _rows.Append(Cell(string.Create(CultureInfo.InvariantCulture, $"{Letters(i)}{_row}"), cell));
        }

        _rows.Append("</row>");
        return this;
    }

    private string Cell(string place, object cell) => cell switch
    {
        string text => string.Create(CultureInfo.InvariantCulture, $"<c r=\"{place}\" t=\"s\"><v>{_book.Text(text)}</v></c>"),
        WorkbookCell { Type: "inlineStr" } inline => $"<c r=\"{place}\" t=\"inlineStr\"><is><t>{WorkbookBuilder.Escape(inline.Value!)}</t></is></c>",
        WorkbookCell special => $"<c r=\"{place}\"" + (special.Type is null ? "" : $" t=\"{special.Type}\"")
            + (special.Format is null ? "" : string.Create(CultureInfo.InvariantCulture, $" s=\"{_book.Style(special.Format)}\"")) + ">"
            + (special.Formula is null ? "" : $"<f>{WorkbookBuilder.Escape(special.Formula)}</f>") + (special.Value is null ? "" : $"<v>{WorkbookBuilder.Escape(special.Value)}</v>") + "</c>",
        IFormattable number => $"<c r=\"{place}\"><v>{number.ToString(null, CultureInfo.InvariantCulture)}</v></c>",
        _ => throw new ArgumentException($"{cell.GetType()} is no cell.", nameof(cell)),
    };

    private static string Letters(int column) => column < 26 ? $"{(char)('A' + column)}" : Letters((column / 26) - 1) + (char)('A' + (column % 26));
}
