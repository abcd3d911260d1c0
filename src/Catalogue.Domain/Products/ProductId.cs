namespace Catalogue.Domain.Products;

/// <summary>Identifies a product.</summary>
/// <param name="Value">A version-7 UUID, never empty.</param>
public readonly record struct ProductId(Guid Value) : ITypedId<ProductId>
{
    /// <inheritdoc />
    public static ProductId From(Guid value) => new(value);

    /// <summary>A new id, ordered by the moment it was made.</summary>
    public static ProductId New() => new(Guid.CreateVersion7());

    /// <inheritdoc />
    public override string ToString() => Value.ToString("D");
}
