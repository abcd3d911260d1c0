namespace Catalogue.Domain.Components.Lists;

/// <summary>A part line that could not be taken over.</summary>
/// <param name="Row">Number of its first line in the file, from 1.</param>
/// <param name="Reason">Why, in plain words.</param>
public sealed record RejectedRow(int Row, string Reason);
