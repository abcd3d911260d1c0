namespace Catalogue.Domain.Components;

/// <summary>Identifies a rating; the same through all revisions.</summary>
/// <param name="Value">A version-7 UUID, never empty.</param>
public readonly record struct RatingId(Guid Value) : ITypedId<RatingId>
{
    /// <inheritdoc />
    public static RatingId From(Guid value) => new(value);

    /// <summary>A new id, ordered by the moment it was made.</summary>
    public static RatingId New() => new(Guid.CreateVersion7());

    /// <inheritdoc />
    public override string ToString() => Value.ToString("D");
}
