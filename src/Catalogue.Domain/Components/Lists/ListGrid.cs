namespace Catalogue.Domain.Components.Lists;

/// <summary>One sheet of a workbook as plain texts, free of any file format.</summary>
/// <param name="Name">The sheet's name.</param>
/// <param name="Rows">The rows that hold something, by rising number.</param>
public sealed record ListGrid(string Name, IReadOnlyList<GridRow> Rows)
{
    /// <summary>True where the workbook does not show the sheet.</summary>
    public bool IsHidden { get; init; }

    /// <summary>Columns that the sheet does not show, from 0.</summary>
    public IReadOnlyList<int> HiddenColumns { get; init; } = [];

    /// <summary>Merged cells.</summary>
    public IReadOnlyList<GridSpan> Merged { get; init; } = [];
}
