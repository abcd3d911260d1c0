namespace Catalogue.Domain.Components.Lists;

/// <summary>One column of a component list.</summary>
/// <param name="Header">The header as written, without blanks at its ends; two header rows joined by <c> / </c>; empty where the column has no name.</param>
/// <param name="Key">
/// A name no other column has: the header, with a number in brackets from its second use on (<c>MPN (2)</c>), or <c>column 6</c> where it is empty.
/// </param>
/// <param name="Meaning">What the column was taken for; null where it was not recognised. Its cells are kept all the same.</param>
public sealed record ListColumn(string Header, string Key, ColumnMeaning? Meaning);
