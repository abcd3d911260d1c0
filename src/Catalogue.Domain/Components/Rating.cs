using Catalogue.Domain.Quantities;
using Catalogue.Domain.Teardowns;

namespace Catalogue.Domain.Components;

/// <summary>A quantity of a component with its condition and source. The same kind may stand more than once, each with its evidence.</summary>
public sealed class Rating : IEditableRecord
{
    /// <inheritdoc />
    public required RevisionId RevisionId { get; set; }

    /// <summary>Its id.</summary>
    public required RatingId Id { get; init; }

    /// <summary>The component.</summary>
    public required ComponentId ComponentId { get; init; }

    /// <summary>What it speaks of; it also decides the unit.</summary>
    public required RatingKind Kind { get; set; }

    /// <summary>The lowest case, in the kind's unit.</summary>
    public required double Low { get; set; }

    /// <summary>The value, in the kind's unit.</summary>
    public required double Nominal { get; set; }

    /// <summary>The highest case, in the kind's unit.</summary>
    public required double High { get; set; }

    /// <summary>The condition it holds under, or null.</summary>
    public string? Condition { get; set; }

    /// <summary>How it is known.</summary>
    public Evidence Evidence { get; set; }

    /// <summary>Where it was found, such as a photo or a datasheet's page, or null where not stated.</summary>
    public string? Source { get; set; }

    /// <inheritdoc />
    public uint Version { get; init; }

    /// <summary>A new rating of a component.</summary>
    public static Rating Of(BoardComponent component, RatingKind kind, Interval value, string? condition, Evidence evidence, string? source)
    {
        ArgumentNullException.ThrowIfNull(component);
        return new Rating
        {
            RevisionId = component.RevisionId,
            Id = RatingId.New(),
            ComponentId = component.Id,
            Kind = kind,
            Low = value.Low,
            Nominal = value.Nominal,
            High = value.High,
            Condition = condition,
            Evidence = evidence,
            Source = source,
        };
    }

    /// <summary>The three cases as an interval.</summary>
    public Interval Interval => Interval.Create(Low, Nominal, High);

    /// <summary>True when its kind or its condition says that it holds for ac, such as <c>250 V~</c> or <c>at 250 V ac</c>.</summary>
    public bool IsForAc => Kind.IsForAc(Condition);
}
