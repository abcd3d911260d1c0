namespace Catalogue.Domain.Families;

/// <summary>
/// Another number under which the same family is known. It joins: a part number with its match key belongs to the family. Codes that are shared are
/// <see cref="TopMark"/>s and join nothing.
/// </summary>
public sealed class FamilyAlias
{
    /// <summary>The family.</summary>
    public required FamilyId FamilyId { get; set; }

    /// <summary>The other number as written.</summary>
    public required string Name { get; init; }

    /// <summary>Its match key; unique over all aliases.</summary>
    public required string MatchKey { get; init; }

    /// <summary><see cref="FamilyNameKind.OrderingVariant"/> or <see cref="FamilyNameKind.OtherNumber"/>.</summary>
    public FamilyNameKind Kind { get; init; } = FamilyNameKind.OtherNumber;
}
