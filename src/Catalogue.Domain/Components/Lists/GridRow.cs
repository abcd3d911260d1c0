namespace Catalogue.Domain.Components.Lists;

/// <summary>One row of a sheet that holds something.</summary>
/// <param name="Number">Its number in the sheet, from 1.</param>
/// <param name="Cells">The cells' texts from the first column on, as a person sees them; empty where there is nothing.</param>
public sealed record GridRow(int Number, IReadOnlyList<string> Cells)
{
    /// <summary>Cells whose text may not be what was typed, by column.</summary>
    public IReadOnlyList<CellDoubt> Doubts { get; init; } = [];

    /// <summary>True where the sheet does not show the row.</summary>
    public bool IsHidden { get; init; }

    /// <summary>Why the row is beyond the limits, in plain words; else null.</summary>
    public string? TooBig { get; init; }
}
