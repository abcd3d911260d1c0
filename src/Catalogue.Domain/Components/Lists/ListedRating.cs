using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Components.Lists;

/// <summary>A rating that a part line states.</summary>
/// <param name="Kind">What it speaks of; it also decides the unit.</param>
/// <param name="Value">The value with its tolerance, in the kind's unit.</param>
/// <param name="Condition">The condition it holds under, or null.</param>
/// <param name="IsFromDescription">True where it stands in the free description, not in the value's own cell.</param>
public sealed record ListedRating(RatingKind Kind, Interval Value, string? Condition, bool IsFromDescription)
{
    /// <summary>True for two that speak of the same: one of them can stand.</summary>
    public bool IsOfSame(ListedRating other) => IsOf(other.Kind, other.Condition);

    /// <summary>The same for a rating that is recorded.</summary>
    public bool IsOfSame(Rating other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return IsOf(other.Kind, other.Condition);
    }

    /// <summary>The rating as one of a component: inferred, since a list says what was meant to be fitted and nobody looked at the part.</summary>
    /// <param name="component">The component.</param>
    /// <param name="source">The list it stands in.</param>
    public Rating Of(BoardComponent component, string source) => Rating.Of(component, Kind, Value, Condition, Evidence.Inferred, source);

    private bool IsOf(RatingKind kind, string? condition) => Kind == kind && string.Equals(Condition, condition, StringComparison.OrdinalIgnoreCase);
}
