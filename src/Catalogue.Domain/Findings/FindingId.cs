namespace Catalogue.Domain.Findings;

/// <summary>Identifies a finding; the same through all revisions.</summary>
/// <param name="Value">A version-7 UUID, never empty.</param>
public readonly record struct FindingId(Guid Value) : ITypedId<FindingId>
{
    /// <inheritdoc />
    public static FindingId From(Guid value) => new(value);

    /// <summary>A new id, ordered by the moment it was made.</summary>
    public static FindingId New() => new(Guid.CreateVersion7());

    /// <inheritdoc />
    public override string ToString() => Value.ToString("D");
}
