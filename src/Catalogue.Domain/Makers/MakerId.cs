namespace Catalogue.Domain.Makers;

/// <summary>Identifies a maker of products or parts.</summary>
/// <param name="Value">A version-7 UUID, never empty.</param>
public readonly record struct MakerId(Guid Value) : ITypedId<MakerId>
{
    /// <inheritdoc />
    public static MakerId From(Guid value) => new(value);

    /// <summary>A new id, ordered by the moment it was made.</summary>
    public static MakerId New() => new(Guid.CreateVersion7());

    /// <inheritdoc />
    public override string ToString() => Value.ToString("D");
}
