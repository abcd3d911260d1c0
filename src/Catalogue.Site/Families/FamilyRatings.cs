using Catalogue.Data.Families;
using Catalogue.Domain.Components;
using Catalogue.Domain.Quantities;

namespace Catalogue.Site.Families;

/// <summary>The ratings of one part family as different teardowns give them, side by side.</summary>
public static class FamilyRatings
{
    // Two teardowns rarely round alike; further apart than this they speak of different ratings.
    private const double AlikeWithin = 0.005;

    /// <summary>One rating of the family: a kind under a condition.</summary>
    /// <param name="Kind">What it speaks of.</param>
    /// <param name="Condition">The condition, or null.</param>
    /// <param name="Values">What was recorded, the most often first.</param>
    /// <param name="IsInConflict">True when two of the values that are not measurements cannot both be the rating.</param>
    public sealed record Row(RatingKind Kind, string? Condition, IReadOnlyList<Value> Values, bool IsInConflict);

    /// <summary>One value of a rating.</summary>
    /// <param name="Interval">The value.</param>
    /// <param name="Evidence">How it is known.</param>
    /// <param name="Sources">Where it was found, as far as that was said.</param>
    /// <param name="Designs">The designs whose teardowns give it.</param>
    public sealed record Value(Interval Interval, Evidence Evidence, IReadOnlyList<string> Sources, IReadOnlyList<FamilyQuery.Use> Designs);

    /// <summary>
    /// The ratings by kind and condition. What a reviewer judged for one design (how currents share, a derating, the temperature around the part)
    /// says nothing about the family and is left out.
    /// </summary>
    public static IReadOnlyList<Row> Of(IReadOnlyList<FamilyQuery.Use> uses) =>
    [
        .. uses
            .SelectMany(use => use.Ratings.Select(rating => (Use: use, Rating: rating)))
            .Where(row => row.Rating.Kind is not (RatingKind.CurrentSharing or RatingKind.Derating or RatingKind.AmbientTemperature or RatingKind.PartTemperature))
            .GroupBy(row => (row.Rating.Kind, Condition: Key(row.Rating.Condition)))
            .OrderBy(group => group.Key.Kind)
            .ThenBy(group => group.Key.Condition, StringComparer.Ordinal)
            .Select(group =>
            {
                List<Value> values =
                [
                    .. group
                        .GroupBy(row => (row.Rating.Interval, row.Rating.Evidence))
                        .Select(same => new Value(
                            same.Key.Interval,
                            same.Key.Evidence,
                            [.. same.Select(row => row.Rating.Source).OfType<string>().Distinct(StringComparer.OrdinalIgnoreCase)],
                            [.. same.Select(row => row.Use).DistinctBy(use => use.Teardown)]))
                        .OrderByDescending(value => value.Designs.Count)
                        .ThenBy(value => value.Evidence)
                        .ThenBy(value => value.Interval.Nominal),
                ];
                return new Row(group.Key.Kind, group.Select(row => row.Rating.Condition).FirstOrDefault(), values, IsInConflict(values));
            }),
    ];

    private static bool IsInConflict(IReadOnlyList<Value> values)
    {
        var stated = values.Where(value => value.Evidence is not Evidence.Measured).Select(value => value.Interval.Nominal).ToList();
        return stated.Count > 1 && stated.Max() - stated.Min() > AlikeWithin * stated.Max(Math.Abs);
    }

    private static string Key(string? condition) => string.Join(' ', (condition ?? "").ToUpperInvariant().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
