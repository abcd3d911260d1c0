namespace Catalogue.Domain.Families;

/// <summary>Identifies a split of a family.</summary>
/// <param name="Value">A version-7 UUID, never empty.</param>
public readonly record struct FamilySplitId(Guid Value) : ITypedId<FamilySplitId>
{
    /// <inheritdoc />
    public static FamilySplitId From(Guid value) => new(value);

    /// <summary>A new id, ordered by the moment it was made.</summary>
    public static FamilySplitId New() => new(Guid.CreateVersion7());

    /// <inheritdoc />
    public override string ToString() => Value.ToString("D");
}
