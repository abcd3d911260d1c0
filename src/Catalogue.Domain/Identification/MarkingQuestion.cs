using Catalogue.Domain.Components;

namespace Catalogue.Domain.Identification;

/// <summary>A marking and what else is known about the part that carries it.</summary>
public sealed record MarkingQuestion
{
    /// <summary>The marking as read, at most <see cref="MarkingReadings.MaxMarkingLength"/> characters.</summary>
    public required string Marking { get; init; }

    /// <summary>The package as written, or null.</summary>
    public string? Package { get; init; }

    /// <summary>What the part does, or null where not known.</summary>
    public FunctionClass? FunctionClass { get; init; }

    /// <summary>The key (<see cref="Makers.MakerName.Key"/>) of the maker read on it, or null.</summary>
    public string? Maker { get; init; }
}
