namespace Catalogue.Domain.Families;

/// <summary>What a reviewer said of a family and the asked one.</summary>
/// <param name="Kind">How they stand to each other.</param>
/// <param name="Note">Why, or null.</param>
public sealed record FamilyWord(FamilyRelationKind Kind, string? Note);
