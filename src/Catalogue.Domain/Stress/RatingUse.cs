using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Stress;

/// <summary>How much of a rating a stress uses. Three ratios that are never mixed in one column.</summary>
/// <remarks><c>utilisation = stress / rating</c>, <c>margin = 1 − utilisation</c>, <c>safety factor = rating / stress</c>. Source: definitions.</remarks>
/// <param name="Utilisation">Above zero; more than 1 is over the rating.</param>
/// <param name="Margin">What is left, as a share of the rating; below zero is over the rating.</param>
/// <param name="SafetyFactor">Above zero; less than 1 is over the rating.</param>
public sealed record RatingUse(Interval Utilisation, Interval Margin, Interval SafetyFactor)
{
    /// <summary>Computes the three.</summary>
    /// <param name="stress">In the unit of the rating.</param>
    /// <param name="rating">What the part is rated for.</param>
    /// <param name="unit">The unit of both, for what is said when they are refused.</param>
    public static Reckoning<RatingUse> Of(Interval? stress, Interval? rating, Unit unit) => new InputCheck()
        .Positive("stress", stress, unit)
        .Positive("rating", rating, unit)
        .Reckon(() => Divide(stress!.Value, rating!.Value));

    private static RatingUse Divide(Interval stress, Interval rating)
    {
        var used = stress / rating;
        return new RatingUse(used, Interval.Create(1 - used.High, 1 - used.Nominal, 1 - used.Low), rating / stress);
    }
}
