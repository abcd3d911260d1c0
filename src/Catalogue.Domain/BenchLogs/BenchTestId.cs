namespace Catalogue.Domain.BenchLogs;

/// <summary>Identifies a bench test; the same through all revisions.</summary>
/// <param name="Value">A version-7 UUID, never empty.</param>
public readonly record struct BenchTestId(Guid Value) : ITypedId<BenchTestId>
{
    /// <inheritdoc />
    public static BenchTestId From(Guid value) => new(value);

    /// <summary>A new id, ordered by the moment it was made.</summary>
    public static BenchTestId New() => new(Guid.CreateVersion7());

    /// <inheritdoc />
    public override string ToString() => Value.ToString("D");
}
