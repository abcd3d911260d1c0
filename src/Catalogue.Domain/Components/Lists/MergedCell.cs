namespace Catalogue.Domain.Components.Lists;

/// <summary>Merged cells of a sheet with the text that stands in them.</summary>
/// <param name="Span">Where they are.</param>
/// <param name="Text">The text of the first; never blank.</param>
internal sealed record MergedCell(GridSpan Span, string Text)
{
    public bool IsTall => Span.LastRow > Span.FirstRow;

    public bool Covers(int column) => column >= Span.FirstColumn && column <= Span.LastColumn;
}
