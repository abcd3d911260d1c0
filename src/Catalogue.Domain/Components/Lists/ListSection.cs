using System.Globalization;

namespace Catalogue.Domain.Components.Lists;

/// <summary>Lines that are read by themselves, into one table or several under each other: a text, a table inside a text, or a sheet.</summary>
/// <param name="Lines">The lines with content, in order.</param>
/// <param name="Blank">Numbers of blank lines, the first ones at least.</param>
internal sealed record ListSection(ListLine[] Lines, IReadOnlyList<int> Blank)
{
    /// <summary>The sheet; null in a text.</summary>
    public string? Sheet { get; init; }

    /// <summary>The character between fields; null where cells need none.</summary>
    public char? Delimiter { get; init; }

    /// <summary>What a person decided.</summary>
    public ComponentListOptions Options { get; init; } = new();

    /// <summary>Columns that the sheet does not show.</summary>
    public IReadOnlyList<int> HiddenColumns { get; init; } = [];

    /// <summary>Reads the section; no part comes with the reason for refusing it.</summary>
    public (ListPart? Part, string? Refusal) Read(ListWarnings warnings)
    {
        if (Options.HeaderLine is { } wanted && !Lines.Any(line => line.LineNumber == wanted))
        {
            return (null, string.Create(CultureInfo.InvariantCulture, $"Line {wanted} was said to be the header, but it is empty or not there."));
        }
        if ((Options.HeaderLine is { } chosen ? ListHeader.At(Lines, chosen) : ListHeader.Find(Lines)) is not { } header)
        {
            return (null, "No header was recognised: one line must name the columns, such as Designator, Quantity, Value, Package, Manufacturer, Part Number.");
        }
        var first = Lines[header.Index].LineNumber;
        var parts = new List<ListPart>();
        for (var rest = new ArraySegment<ListLine>(Lines); ;)
        {
            if (header.FieldCount > ComponentList.MaxColumns)
            {
                return (null, string.Create(CultureInfo.InvariantCulture, $"The header has more than {ComponentList.MaxColumns} columns."));
            }
            var end = NextHeader(rest, header);
            if (new ListTable(this, rest[..end], header, warnings).Read() is not { } part)
            {
                return (null, string.Create(CultureInfo.InvariantCulture, $"The list has more than {ComponentList.MaxCells} cells."));
            }
            parts.Add(part);
            if (end == rest.Count)
            {
                break;
            }
            rest = rest[end..];
            header = ListHeader.Find(rest)!;
        }
        warnings.AddRows(Blank, "empty, skipped.");
        var all = ListPart.Join(parts);
        return all.Count > 0
            ? (all, null)
            : (null, string.Create(CultureInfo.InvariantCulture, $"A header was found in line {first}, but no part line below it."));
    }

    /// <summary>Where another table begins, whose header names other columns; else the number of lines.</summary>
    private static int NextHeader(IReadOnlyList<ListLine> lines, ListHeader header)
    {
        for (var i = header.Index + header.RowCount; i < lines.Count; i++)
        {
            if (!header.IsRepeatedBy(lines[i]) && ListHeader.IsCertain(lines[i]))
            {
                return i;
            }
        }
        return lines.Count;
    }
}
