namespace Catalogue.Domain.Teardowns;

/// <summary>Identifies a board; the same through all revisions.</summary>
/// <param name="Value">A version-7 UUID, never empty.</param>
public readonly record struct BoardId(Guid Value) : ITypedId<BoardId>
{
    /// <inheritdoc />
    public static BoardId From(Guid value) => new(value);

    /// <summary>A new id, ordered by the moment it was made.</summary>
    public static BoardId New() => new(Guid.CreateVersion7());

    /// <inheritdoc />
    public override string ToString() => Value.ToString("D");
}
