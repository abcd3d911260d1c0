namespace Catalogue.Domain.Products;

/// <summary>Identifies a claim; the same through all revisions.</summary>
/// <param name="Value">A version-7 UUID, never empty.</param>
public readonly record struct ClaimId(Guid Value) : ITypedId<ClaimId>
{
    /// <inheritdoc />
    public static ClaimId From(Guid value) => new(value);

    /// <summary>A new id, ordered by the moment it was made.</summary>
    public static ClaimId New() => new(Guid.CreateVersion7());

    /// <inheritdoc />
    public override string ToString() => Value.ToString("D");
}
