namespace Catalogue.Domain.Components.Lists;

/// <summary>A part line that could not be taken over.</summary>
/// <param name="Row">Number of its first line in the file or of its row in the sheet, from 1.</param>
/// <param name="Reason">Why, in plain words.</param>
/// <param name="Sheet">The sheet, or null in a text.</param>
public sealed record RejectedRow(int Row, string Reason, string? Sheet = null)
{
    /// <summary>Where the row is, in words: <c>Row 8</c>, or <c>Row 8 of “main”</c>.</summary>
    public string Place => ListWarnings.Rows([Row], Sheet);
}
