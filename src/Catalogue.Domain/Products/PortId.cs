namespace Catalogue.Domain.Products;

/// <summary>Identifies a port; the same through all revisions.</summary>
/// <param name="Value">A version-7 UUID, never empty.</param>
public readonly record struct PortId(Guid Value) : ITypedId<PortId>
{
    /// <inheritdoc />
    public static PortId From(Guid value) => new(value);

    /// <summary>A new id, ordered by the moment it was made.</summary>
    public static PortId New() => new(Guid.CreateVersion7());

    /// <inheritdoc />
    public override string ToString() => Value.ToString("D");
}
