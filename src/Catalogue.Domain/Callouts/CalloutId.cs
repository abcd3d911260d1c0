namespace Catalogue.Domain.Callouts;

/// <summary>Identifies a callout; the same through all revisions.</summary>
/// <param name="Value">A version-7 UUID, never empty.</param>
public readonly record struct CalloutId(Guid Value) : ITypedId<CalloutId>
{
    /// <inheritdoc />
    public static CalloutId From(Guid value) => new(value);

    /// <summary>A new id, ordered by the moment it was made.</summary>
    public static CalloutId New() => new(Guid.CreateVersion7());

    /// <inheritdoc />
    public override string ToString() => Value.ToString("D");
}
