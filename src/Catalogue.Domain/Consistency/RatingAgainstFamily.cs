using System.Globalization;
using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Consistency;

/// <summary>One part family, two ratings of the same kind: within the revision, and against what other teardowns publish.</summary>
/// <remarks>Only what a part is rated for counts, under the same condition; intervals that meet agree. House rule: 2 % apart is no difference.</remarks>
internal static class RatingAgainstFamily
{
    public static IEnumerable<Contradiction> Find(ConsistencyFacts facts)
    {
        var parts = facts.Facts.Components.Where(component => component.FamilyId is not null).ToDictionary(component => component.Id);
        var rated = facts.Facts.Ratings.Where(rating => !rating.Kind.IsInUse() && parts.ContainsKey(rating.ComponentId)).ToList();
        foreach (var same in rated.GroupBy(rating => (Family: facts.FamilyOf(parts[rating.ComponentId])!.Value, rating.Kind, Condition: rating.Condition?.Trim().ToUpperInvariant())))
        {
            var (lowest, highest) = (same.MinBy(rating => rating.High)!, same.MaxBy(rating => rating.Low)!);
            if (highest.Low > lowest.High * (1 + StatedRating.Slack))
                yield return new Contradiction(
                    "rating_within_family",
                    ContradictionSeverity.LookAgain,
                    $"{parts[lowest.ComponentId].Name} and {parts[highest.ComponentId].Name} are of one family with two ratings: {same.Key.Kind.Word()}.",
                    Of(parts[lowest.ComponentId], lowest),
                    Of(parts[highest.ComponentId], highest));
        }

        var elsewhere = facts.FamilyRatings.ToDictionary(rating => (rating.Family, rating.Kind));
        foreach (var rating in rated)
        {
            var part = parts[rating.ComponentId];
            if (elsewhere.TryGetValue((facts.FamilyOf(part)!.Value, rating.Kind), out var other) && (rating.Low > other.High * (1 + StatedRating.Slack) || rating.High < other.Low * (1 - StatedRating.Slack)))
                yield return new Contradiction(
                    "rating_against_family",
                    ContradictionSeverity.LookAgain,
                    $"{part.Name}: other teardowns publish another {rating.Kind.Word()} for this family.",
                    Of(part, rating),
                    new StatedFact(
                        rating.Kind.Word(),
                        other.Low == other.High ? QuantityText.Of(other.Low, rating.Kind.Unit()) : $"{QuantityText.Of(other.Low, rating.Kind.Unit())} to {QuantityText.Of(other.High, rating.Kind.Unit())}",
                        $"{other.Teardowns.ToString(CultureInfo.InvariantCulture)} published {(other.Teardowns == 1 ? "teardown" : "teardowns")}",
                        null));
        }
    }

    private static StatedFact Of(BoardComponent part, Rating rating) =>
        new($"{rating.Kind.Word()} of {part.Name}", QuantityText.Of(rating.Interval, rating.Kind.Unit()), rating.Source ?? rating.Evidence.Word(), part.Id.Value);
}
