namespace Catalogue.Domain.Consistency;

/// <summary>One side of a contradiction.</summary>
/// <param name="What">What it is about, such as <c>claimed energy</c>.</param>
/// <param name="Says">What it says, such as <c>74 Wh</c>.</param>
/// <param name="Source">Where it stands, or null where not stated.</param>
/// <param name="RecordId">The id of the record that says it, or null for a sum of several.</param>
public sealed record StatedFact(string What, string Says, string? Source, Guid? RecordId);
