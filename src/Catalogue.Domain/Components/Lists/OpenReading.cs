namespace Catalogue.Domain.Components.Lists;

/// <summary>A cell that may be read in more than one way: a person decides. The same question is among the warnings.</summary>
/// <param name="Sheet">The sheet, or null in a text.</param>
/// <param name="Row">Number of the row in its sheet or file, from 1.</param>
/// <param name="Column">The column's <see cref="ListColumn.Key"/>.</param>
/// <param name="Text">The cell as read.</param>
/// <param name="Readings">What it may mean, the likeliest first; at least two.</param>
/// <param name="Question">What is to be decided, in plain words.</param>
public sealed record OpenReading(string? Sheet, int Row, string Column, string Text, IReadOnlyList<string> Readings, string Question);
