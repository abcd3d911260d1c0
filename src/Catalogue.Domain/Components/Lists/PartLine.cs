namespace Catalogue.Domain.Components.Lists;

/// <summary>A part line brought to the width of the header (or wider, where its surplus could not be explained).</summary>
/// <param name="LineNumber">Number of its first line in the file, from 1.</param>
/// <param name="Cells">Its cells as read, at least one for each column.</param>
/// <param name="Remarks">What was noticed so far.</param>
/// <param name="Line">The line it was made from.</param>
internal sealed record PartLine(int LineNumber, string[] Cells, IReadOnlyList<string> Remarks, ListLine Line);
