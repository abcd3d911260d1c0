namespace Catalogue.Domain.Components.Lists;

/// <summary>One record of a list: a line, or several where a quoted field holds line breaks.</summary>
/// <param name="LineNumber">Number of its first line in the file, from 1.</param>
/// <param name="Cells">The fields without the empty ones at the end; at most <see cref="ComponentList.MaxColumns"/>.</param>
/// <param name="FieldCount">How many fields there are, the empty ones at the end included.</param>
/// <param name="TooBig">Why the record is beyond the limits, else null.</param>
/// <param name="BareQuote">A quotation mark stands in a field that is not quoted.</param>
/// <param name="OpenQuote">A quotation mark opens a field and is never closed.</param>
internal sealed record ListLine(int LineNumber, string[] Cells, int FieldCount, string? TooBig, bool BareQuote, bool OpenQuote)
{
    /// <summary>Cells of a sheet whose text may not be what was typed.</summary>
    public IReadOnlyList<CellDoubt> Doubts { get; init; } = [];

    /// <summary>Merged cells that reach into this row of a sheet.</summary>
    public IReadOnlyList<MergedCell> Merged { get; init; } = [];

    /// <summary>True where a sheet does not show the row.</summary>
    public bool IsHidden { get; init; }

    public bool IsBlank => TooBig is null && Array.TrueForAll(Cells, string.IsNullOrWhiteSpace);

    public string Cell(int index) => index < Cells.Length ? Cells[index] : "";
}
