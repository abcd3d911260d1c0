using Catalogue.Domain.Quantities;
using Catalogue.Domain.Teardowns;

namespace Catalogue.Domain.Rails;

/// <summary>One known quantity of a rail with its spread, evidence and source; at most one of each kind a rail.</summary>
public sealed class RailQuantity : IRevisionContent
{
    /// <inheritdoc />
    public required RevisionId RevisionId { get; set; }

    /// <summary>Its id.</summary>
    public required RailQuantityId Id { get; init; }

    /// <summary>The rail.</summary>
    public required RailId RailId { get; init; }

    /// <summary>What it speaks of; it also decides the unit.</summary>
    public required RailQuantityKind Kind { get; init; }

    /// <summary>The lowest case.</summary>
    public required double Low { get; set; }

    /// <summary>The value.</summary>
    public required double Nominal { get; set; }

    /// <summary>The highest case.</summary>
    public required double High { get; set; }

    /// <summary>How it is known.</summary>
    public Evidence Evidence { get; set; }

    /// <summary>Where it was found, or null where not stated.</summary>
    public string? Source { get; set; }

    /// <summary>The three cases as an interval.</summary>
    public Interval Interval => Interval.Create(Low, Nominal, High);
}
