namespace Catalogue.Domain.Rails;

/// <summary>Identifies a quantity of a rail; the same through all revisions.</summary>
/// <param name="Value">A version-7 UUID, never empty.</param>
public readonly record struct RailQuantityId(Guid Value) : ITypedId<RailQuantityId>
{
    /// <inheritdoc />
    public static RailQuantityId From(Guid value) => new(value);

    /// <summary>A new id, ordered by the moment it was made.</summary>
    public static RailQuantityId New() => new(Guid.CreateVersion7());

    /// <inheritdoc />
    public override string ToString() => Value.ToString("D");
}
