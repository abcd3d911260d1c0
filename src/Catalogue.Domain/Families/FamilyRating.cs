using Catalogue.Domain.Components;
using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Families;

/// <summary>A typical rating of a family. It never enters a figure: figures take the ratings of the component in hand.</summary>
public sealed class FamilyRating
{
    /// <summary>Its id.</summary>
    public required FamilyRatingId Id { get; init; }

    /// <summary>The family.</summary>
    public required FamilyId FamilyId { get; set; }

    /// <summary>What it speaks of; it also decides the unit.</summary>
    public required RatingKind Kind { get; init; }

    /// <summary>The lowest case, in the kind's unit.</summary>
    public required double Low { get; init; }

    /// <summary>The value, in the kind's unit.</summary>
    public required double Nominal { get; init; }

    /// <summary>The highest case, in the kind's unit.</summary>
    public required double High { get; init; }

    /// <summary>The condition it holds under, or null.</summary>
    public string? Condition { get; init; }

    /// <summary>How it is known.</summary>
    public Evidence Evidence { get; init; }

    /// <summary>Where it was found, such as a datasheet's page; or null.</summary>
    public string? Source { get; init; }
}
