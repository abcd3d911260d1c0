namespace Catalogue.Domain.Teardowns;

/// <summary>Identifies a teardown.</summary>
/// <param name="Value">A version-7 UUID, never empty.</param>
public readonly record struct TeardownId(Guid Value) : ITypedId<TeardownId>
{
    /// <inheritdoc />
    public static TeardownId From(Guid value) => new(value);

    /// <summary>A new id, ordered by the moment it was made.</summary>
    public static TeardownId New() => new(Guid.CreateVersion7());

    /// <inheritdoc />
    public override string ToString() => Value.ToString("D");
}
