using Catalogue.Data.Families;
using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
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
    /// <param name="IsTypical">True where it is recorded with the family itself.</param>
    public sealed record Value(Interval Interval, Evidence Evidence, IReadOnlyList<string> Sources, IReadOnlyList<FamilyQuery.Use> Designs, bool IsTypical = false);

    /// <summary>Teardowns that contradict the family's typical rating, or where there is none what most of them say.</summary>
    /// <param name="Row">The rating.</param>
    /// <param name="Reference">What it is held against.</param>
    /// <param name="Other">The value that is not the same, with the teardowns that give it.</param>
    public sealed record Disagreement(Row Row, Value Reference, Value Other);

    /// <summary>
    /// The ratings by kind and condition, typical ones first. What a reviewer judged for one design (how currents share, a derating, the temperature
    /// around the part) says nothing about the family and is left out.
    /// </summary>
    /// <param name="uses">The parts that count to the family.</param>
    /// <param name="typical">The family's typical ratings.</param>
    public static IReadOnlyList<Row> Of(IReadOnlyList<FamilyQuery.Use> uses, IReadOnlyList<FamilyRating>? typical = null) =>
    [
        .. uses
            .SelectMany(use => use.Ratings.Select(rating => new Stated(rating.Kind, rating.Condition, rating.Interval, rating.Evidence, rating.Source, use)))
            .Where(row => row.Kind is not (RatingKind.CurrentSharing or RatingKind.Derating or RatingKind.AmbientTemperature or RatingKind.PartTemperature))
            .Concat((typical ?? []).Select(rating => new Stated(rating.Kind, rating.Condition, Interval.Create(rating.Low, rating.Nominal, rating.High), rating.Evidence, rating.Source, null)))
            .GroupBy(row => (row.Kind, Condition: Key(row.Condition)))
            .OrderBy(group => group.Key.Kind)
            .ThenBy(group => group.Key.Condition, StringComparer.Ordinal)
            .Select(group =>
            {
                List<Value> values =
                [
                    .. group
                        .GroupBy(row => (row.Interval, row.Evidence, IsTypical: row.Use is null))
                        .Select(same => new Value(
                            same.Key.Interval,
                            same.Key.Evidence,
                            [.. same.Select(row => row.Source).OfType<string>().Distinct(StringComparer.OrdinalIgnoreCase)],
                            [.. same.Select(row => row.Use).OfType<FamilyQuery.Use>().DistinctBy(use => use.Teardown)],
                            same.Key.IsTypical))
                        .OrderByDescending(value => value.IsTypical)
                        .ThenByDescending(value => value.Designs.Count)
                        .ThenBy(value => value.Evidence)
                        .ThenBy(value => value.Interval.Nominal),
                ];
                return new Row(group.Key.Kind, group.Select(row => row.Condition).FirstOrDefault(), values, IsInConflict(values));
            }),
    ];

    /// <summary>Which teardowns disagree, by rating; empty without a conflict.</summary>
    public static IReadOnlyList<Disagreement> Disagreements(IReadOnlyList<Row> rows)
    {
        var found = new List<Disagreement>();
        foreach (var row in rows.Where(row => row.IsInConflict))
        {
            var stated = row.Values.Where(value => value.Evidence is not Evidence.Measured).ToList();
            found.AddRange(stated.Skip(1).Where(value => !AreAlike(value, stated[0])).Select(value => new Disagreement(row, stated[0], value)));
        }

        return found;
    }

    private static bool AreAlike(Value one, Value other) =>
        Math.Abs(one.Interval.Nominal - other.Interval.Nominal) <= AlikeWithin * Math.Max(Math.Abs(one.Interval.Nominal), Math.Abs(other.Interval.Nominal));

    private static bool IsInConflict(IReadOnlyList<Value> values)
    {
        var stated = values.Where(value => value.Evidence is not Evidence.Measured).Select(value => value.Interval.Nominal).ToList();
        return stated.Count > 1 && stated.Max() - stated.Min() > AlikeWithin * stated.Max(Math.Abs);
    }

    private static string Key(string? condition) => string.Join(' ', (condition ?? "").ToUpperInvariant().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private sealed record Stated(RatingKind Kind, string? Condition, Interval Interval, Evidence Evidence, string? Source, FamilyQuery.Use? Use);
}
