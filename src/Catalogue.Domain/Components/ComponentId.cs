namespace Catalogue.Domain.Components;

/// <summary>Identifies a component; the same through all revisions.</summary>
/// <param name="Value">A version-7 UUID, never empty.</param>
public readonly record struct ComponentId(Guid Value) : ITypedId<ComponentId>
{
    /// <inheritdoc />
    public static ComponentId From(Guid value) => new(value);

    /// <summary>A new id, ordered by the moment it was made.</summary>
    public static ComponentId New() => new(Guid.CreateVersion7());

    /// <inheritdoc />
    public override string ToString() => Value.ToString("D");
}
