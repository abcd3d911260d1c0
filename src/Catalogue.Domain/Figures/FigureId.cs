namespace Catalogue.Domain.Figures;

/// <summary>Identifies a computed figure of one revision.</summary>
/// <param name="Value">A version-7 UUID, never empty.</param>
public readonly record struct FigureId(Guid Value) : ITypedId<FigureId>
{
    /// <inheritdoc />
    public static FigureId From(Guid value) => new(value);

    /// <summary>A new id, ordered by the moment it was made.</summary>
    public static FigureId New() => new(Guid.CreateVersion7());

    /// <inheritdoc />
    public override string ToString() => Value.ToString("D");
}
