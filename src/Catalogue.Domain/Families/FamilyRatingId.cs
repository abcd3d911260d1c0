namespace Catalogue.Domain.Families;

/// <summary>Identifies a typical rating of a family.</summary>
/// <param name="Value">A version-7 UUID, never empty.</param>
public readonly record struct FamilyRatingId(Guid Value) : ITypedId<FamilyRatingId>
{
    /// <inheritdoc />
    public static FamilyRatingId From(Guid value) => new(value);

    /// <summary>A new id, ordered by the moment it was made.</summary>
    public static FamilyRatingId New() => new(Guid.CreateVersion7());

    /// <inheritdoc />
    public override string ToString() => Value.ToString("D");
}
