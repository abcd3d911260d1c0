namespace Catalogue.Domain.Components;

/// <summary>One cell of an imported row.</summary>
/// <param name="Header">The column's header as written; of nameless columns their letter or number.</param>
/// <param name="Text">The cell's text as read.</param>
public sealed record ImportedCell(string Header, string Text);
