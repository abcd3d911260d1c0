namespace Catalogue.Domain.Teardowns;

/// <summary>Identifies a revision of a teardown.</summary>
/// <param name="Value">A version-7 UUID, never empty.</param>
public readonly record struct RevisionId(Guid Value) : ITypedId<RevisionId>
{
    /// <inheritdoc />
    public static RevisionId From(Guid value) => new(value);

    /// <summary>A new id, ordered by the moment it was made.</summary>
    public static RevisionId New() => new(Guid.CreateVersion7());

    /// <inheritdoc />
    public override string ToString() => Value.ToString("D");
}
