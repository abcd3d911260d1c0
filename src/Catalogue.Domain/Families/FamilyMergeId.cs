namespace Catalogue.Domain.Families;

/// <summary>Identifies a merge of families.</summary>
/// <param name="Value">A version-7 UUID, never empty.</param>
public readonly record struct FamilyMergeId(Guid Value) : ITypedId<FamilyMergeId>
{
    /// <inheritdoc />
    public static FamilyMergeId From(Guid value) => new(value);

    /// <summary>A new id, ordered by the moment it was made.</summary>
    public static FamilyMergeId New() => new(Guid.CreateVersion7());

    /// <inheritdoc />
    public override string ToString() => Value.ToString("D");
}
