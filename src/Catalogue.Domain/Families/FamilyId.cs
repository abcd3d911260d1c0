namespace Catalogue.Domain.Families;

/// <summary>Identifies a part family.</summary>
/// <param name="Value">A version-7 UUID, never empty.</param>
public readonly record struct FamilyId(Guid Value) : ITypedId<FamilyId>
{
    /// <inheritdoc />
    public static FamilyId From(Guid value) => new(value);

    /// <summary>A new id, ordered by the moment it was made.</summary>
    public static FamilyId New() => new(Guid.CreateVersion7());

    /// <inheritdoc />
    public override string ToString() => Value.ToString("D");
}
