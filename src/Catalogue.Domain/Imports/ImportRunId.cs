namespace Catalogue.Domain.Imports;

/// <summary>Identifies an import run.</summary>
/// <param name="Value">A version-7 UUID, never empty.</param>
public readonly record struct ImportRunId(Guid Value) : ITypedId<ImportRunId>
{
    /// <inheritdoc />
    public static ImportRunId From(Guid value) => new(value);

    /// <summary>A new id, ordered by the moment it was made.</summary>
    public static ImportRunId New() => new(Guid.CreateVersion7());

    /// <inheritdoc />
    public override string ToString() => Value.ToString("D");
}
