namespace Catalogue.Domain.Rails;

/// <summary>Identifies a discharge reading; the same through all revisions.</summary>
/// <param name="Value">A version-7 UUID, never empty.</param>
public readonly record struct DischargeReadingId(Guid Value) : ITypedId<DischargeReadingId>
{
    /// <inheritdoc />
    public static DischargeReadingId From(Guid value) => new(value);

    /// <summary>A new id, ordered by the moment it was made.</summary>
    public static DischargeReadingId New() => new(Guid.CreateVersion7());

    /// <inheritdoc />
    public override string ToString() => Value.ToString("D");
}
