using Catalogue.Domain.Components;

namespace Catalogue.Domain.Figures;

/// <summary>All that the rules of a part may take: the part, its ratings, its rail.</summary>
/// <param name="component">The part.</param>
/// <param name="ratings">Its ratings.</param>
/// <param name="rail">The rail it sits on or in, or null.</param>
/// <param name="chemistry">The cells' chemistry as recorded, or null.</param>
public sealed class PartFacts(BoardComponent component, IReadOnlyList<Rating> ratings, RailFacts? rail, string? chemistry)
{
    /// <summary>The part.</summary>
    public BoardComponent Component => component;

    /// <summary>The rail, or null.</summary>
    public RailFacts? Rail => rail;

    /// <summary>The cells' chemistry as recorded, or null.</summary>
    public string? Chemistry => chemistry;

    /// <summary>True when it is of that class or of one within it.</summary>
    public bool Is(FunctionClass functionClass) => component.FunctionClass is { } own && own.Is(functionClass);

    /// <summary>
    /// The rating of a kind to compute with, or null. The strongest evidence counts; of equals the one that leaves least room: the smallest
    /// of what a part may bear, the largest of what wears on it.
    /// </summary>
    public Given? Best(RatingKind kind) => Best(kind, _ => true);

    /// <summary>The rating to compute with among those that hold under a condition, or null.</summary>
    public Given? Best(RatingKind kind, Func<Rating, bool> holds)
    {
        ArgumentNullException.ThrowIfNull(holds);
        Rating? best = null;
        foreach (var rating in ratings)
            if (rating.Kind == kind && holds(rating) && (best is null || Before(rating, best)))
                best = rating;
        return best is null
            ? null
            : new Given(best.Interval, best.Evidence, best.Source is { } source && best.Condition is { } condition ? $"{source}, {condition}" : best.Source ?? best.Condition);
    }

    private static bool Before(Rating one, Rating other)
    {
        if (one.Evidence != other.Evidence)
            return one.Evidence < other.Evidence;
        var wears = Wears(one.Kind);
        var (a, b) = wears ? (-one.High, -other.High) : (one.Low, other.Low);
        if (a != b)
            return a < b;
        (a, b) = wears ? (-one.Nominal, -other.Nominal) : (one.Nominal, other.Nominal);
        return a != b ? a < b : one.Id.Value.CompareTo(other.Id.Value) < 0;
    }

    // What a part sees, or what makes it lose more: the larger is the worse.
    private static bool Wears(RatingKind kind) => kind is RatingKind.AmbientTemperature or RatingKind.PartTemperature or RatingKind.TemperatureSlope or RatingKind.PeakVoltage or RatingKind.RippleVoltage
        or RatingKind.SpikeVoltage or RatingKind.RmsCurrent or RatingKind.MeanCurrent or RatingKind.ForwardVoltage or RatingKind.OnResistance or RatingKind.TemperatureFactor or RatingKind.TemperatureCoefficient
        or RatingKind.ThermalResistance or RatingKind.TurnsRatio or RatingKind.OutputVoltage;
}
