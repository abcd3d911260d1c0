namespace Catalogue.Data.Teardowns;

/// <summary>Why a form cannot be saved.</summary>
/// <param name="Field">The field, by its name in JSON, or null where it is not one field.</param>
/// <param name="Reason">Says what was wrong and what would be right.</param>
public sealed record Refusal(string? Field, string Reason);
