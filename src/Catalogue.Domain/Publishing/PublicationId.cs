namespace Catalogue.Domain.Publishing;

/// <summary>Identifies an act of publishing.</summary>
/// <param name="Value">A version-7 UUID, never empty.</param>
public readonly record struct PublicationId(Guid Value) : ITypedId<PublicationId>
{
    /// <inheritdoc />
    public static PublicationId From(Guid value) => new(value);

    /// <summary>A new id, ordered by the moment it was made.</summary>
    public static PublicationId New() => new(Guid.CreateVersion7());

    /// <inheritdoc />
    public override string ToString() => Value.ToString("D");
}
