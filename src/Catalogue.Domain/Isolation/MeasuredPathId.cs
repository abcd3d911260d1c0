namespace Catalogue.Domain.Isolation;

/// <summary>Identifies a measured path; the same through all revisions.</summary>
/// <param name="Value">A version-7 UUID, never empty.</param>
public readonly record struct MeasuredPathId(Guid Value) : ITypedId<MeasuredPathId>
{
    /// <inheritdoc />
    public static MeasuredPathId From(Guid value) => new(value);

    /// <summary>A new id, ordered by the moment it was made.</summary>
    public static MeasuredPathId New() => new(Guid.CreateVersion7());

    /// <inheritdoc />
    public override string ToString() => Value.ToString("D");
}
