namespace Catalogue.Domain.Teardowns;

/// <summary>Identifies a step of taking apart; the same through all revisions.</summary>
/// <param name="Value">A version-7 UUID, never empty.</param>
public readonly record struct StepId(Guid Value) : ITypedId<StepId>
{
    /// <inheritdoc />
    public static StepId From(Guid value) => new(value);

    /// <summary>A new id, ordered by the moment it was made.</summary>
    public static StepId New() => new(Guid.CreateVersion7());

    /// <inheritdoc />
    public override string ToString() => Value.ToString("D");
}
