namespace Catalogue.Domain.Components.Lists;

/// <summary>Cells that are merged into one. Its text stands in the first.</summary>
/// <param name="FirstRow">Number of the upper row, from 1.</param>
/// <param name="FirstColumn">The left column, from 0.</param>
/// <param name="LastRow">Number of the lower row, from 1.</param>
/// <param name="LastColumn">The right column, from 0.</param>
public sealed record GridSpan(int FirstRow, int FirstColumn, int LastRow, int LastColumn);
