namespace Catalogue.Domain.Families;

/// <summary>Identifies a top-mark code of a family.</summary>
/// <param name="Value">A version-7 UUID, never empty.</param>
public readonly record struct TopMarkId(Guid Value) : ITypedId<TopMarkId>
{
    /// <inheritdoc />
    public static TopMarkId From(Guid value) => new(value);

    /// <summary>A new id, ordered by the moment it was made.</summary>
    public static TopMarkId New() => new(Guid.CreateVersion7());

    /// <inheritdoc />
    public override string ToString() => Value.ToString("D");
}
