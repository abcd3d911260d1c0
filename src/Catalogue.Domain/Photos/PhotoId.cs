namespace Catalogue.Domain.Photos;

/// <summary>Identifies a photo; the same through all revisions.</summary>
/// <param name="Value">A version-7 UUID, never empty.</param>
public readonly record struct PhotoId(Guid Value) : ITypedId<PhotoId>
{
    /// <inheritdoc />
    public static PhotoId From(Guid value) => new(value);

    /// <summary>A new id, ordered by the moment it was made.</summary>
    public static PhotoId New() => new(Guid.CreateVersion7());

    /// <inheritdoc />
    public override string ToString() => Value.ToString("D");
}
