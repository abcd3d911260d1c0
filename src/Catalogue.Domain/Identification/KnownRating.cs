using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Identification;

/// <summary>A rating that is known of a family and may be taken over to a part of it.</summary>
/// <param name="Kind">What it speaks of; it also decides the unit.</param>
/// <param name="Value">The value in the kind's unit.</param>
/// <param name="Condition">The condition it holds under, or null.</param>
/// <param name="Evidence">How it is known where it was found.</param>
/// <param name="Source">Where it was found; it names the family.</param>
public sealed record KnownRating(RatingKind Kind, Interval Value, string? Condition, Evidence Evidence, string Source)
{
    /// <summary>
    /// The ratings to take over: the family's typical ones of a kind where there are any, else those that teardowns give, each value once with its
    /// strongest evidence. A kind of which teardowns give different values under one condition is left out: nobody knows which of them holds for
    /// this part.
    /// </summary>
    /// <param name="typical">The family's typical ratings.</param>
    /// <param name="published">Ratings that published teardowns give for parts of the family.</param>
    public static IReadOnlyList<KnownRating> Choose(IEnumerable<KnownRating> typical, IEnumerable<KnownRating> published)
    {
        ArgumentNullException.ThrowIfNull(typical);
        ArgumentNullException.ThrowIfNull(published);
        var settled = Stated(typical).ToList();
        var kinds = settled.Select(rating => rating.Said.Kind).ToHashSet();
        var given = Stated(published).Where(rating => rating.Known.Evidence is Evidence.ReadOnPart or Evidence.Datasheet && !kinds.Contains(rating.Said.Kind));
        return
        [
            .. settled.Concat(given)
                .GroupBy(rating => rating.Said.Kind)
                .Where(kind => kind.GroupBy(rating => rating.Said.ConditionKey, StringComparer.Ordinal).All(same => same.Select(rating => rating.Known.Value).Distinct().Count() == 1))
                .OrderBy(kind => kind.Key)
                .SelectMany(kind => kind
                    .GroupBy(rating => rating.Said.ConditionKey, StringComparer.Ordinal)
                    .OrderBy(same => same.Key, StringComparer.Ordinal)
                    .Select(same => same.Select(rating => rating.Known).OrderBy(rating => rating.Evidence).ThenBy(rating => rating.Source, StringComparer.Ordinal).First())),
        ];
    }

    /// <summary>Those of a kind that the part in hand says nothing of: what stands there is never doubled.</summary>
    public static IReadOnlyList<KnownRating> Missing(IEnumerable<KnownRating> known, IEnumerable<Rating> own)
    {
        ArgumentNullException.ThrowIfNull(known);
        ArgumentNullException.ThrowIfNull(own);
        var there = own.Select(rating => Subject(rating.Kind, rating.Condition)).ToHashSet();
        return [.. known.Where(rating => !there.Contains(Subject(rating.Kind, rating.Condition)))];
    }

    /// <summary>The rating as one of a part.</summary>
    public Rating Of(BoardComponent component) => Rating.Of(component, Kind, Value, Condition, Evidence, Source);

    // What was measured on one sample, guessed, or judged for one design says nothing of another part.
    private static IEnumerable<(KnownRating Known, StatedRating Said)> Stated(IEnumerable<KnownRating> ratings) =>
        ratings.Select(rating => (rating, StatedRating.From(rating.Kind, rating.Value, rating.Condition, rating.Evidence))).Where(pair => pair.Item2 is not null)!;

    private static RatingKind Subject(RatingKind kind, string? condition) => kind is RatingKind.RatedVoltage && kind.IsForAc(condition) ? RatingKind.RatedVoltageAc : kind;
}
