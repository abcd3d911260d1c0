namespace Catalogue.Domain.BenchLogs;

/// <summary>What a caller knows of a log.</summary>
public sealed record BenchLogOptions
{
    /// <summary>Columns whose role or unit the caller gives.</summary>
    public IReadOnlyList<BenchLogMapping> Columns { get; init; } = [];

    /// <summary>What is made of a clock that goes back.</summary>
    public BenchLogStepBack StepBack { get; init; }
}
