namespace Catalogue.Domain.Components.Lists;

/// <summary>A cell as read.</summary>
/// <param name="Header">The column's <see cref="ListColumn.Key"/>.</param>
/// <param name="Text">The text as in the file, unquoted; only control characters are taken out.</param>
/// <param name="Meaning">What the column was taken for, or null.</param>
public sealed record ListCell(string Header, string Text, ColumnMeaning? Meaning = null);
