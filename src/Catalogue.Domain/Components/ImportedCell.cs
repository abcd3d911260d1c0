using Catalogue.Domain.Components.Lists;

namespace Catalogue.Domain.Components;

/// <summary>One cell of an imported row.</summary>
/// <param name="Header">The column's header as written; of nameless columns their letter or number.</param>
/// <param name="Text">The cell's text as read.</param>
/// <param name="Meaning">What the column was taken for, or null where it was only kept.</param>
public sealed record ImportedCell(string Header, string Text, ColumnMeaning? Meaning = null);
