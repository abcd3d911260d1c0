namespace Catalogue.Domain.Identification;

/// <summary>A piece of a name that is shown beside another one.</summary>
/// <param name="Text">The piece as written, not empty.</param>
/// <param name="Differs">True where the other name has something else in its place, or nothing.</param>
public sealed record NamePiece(string Text, bool Differs);
