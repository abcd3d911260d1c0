namespace Catalogue.Domain.Families;

/// <summary>Another number under which the same family is known: a top-mark code, an ordering variant, an old number.</summary>
public sealed class FamilyAlias
{
    /// <summary>The family.</summary>
    public required FamilyId FamilyId { get; init; }

    /// <summary>The other number as written.</summary>
    public required string Name { get; init; }

    /// <summary>Its match key; unique over all aliases.</summary>
    public required string MatchKey { get; init; }
}
