using Catalogue.Domain.Components;
using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Families;

/// <summary>One kind of rating of a stand-in, held against that of the part whose place it would take.</summary>
/// <remarks>
/// <para>
/// House rule. What a part is good for is the worse end of what is stated: at least, its low end; at most, its high end. Where several values are
/// stated, each of the stand-in's must cover each of the other's, so the lowest guarantee meets the highest demand. A value with a tolerance lies
/// within another's tolerance; without one it must be equal; with a tolerance on one side only, equal values leave it open.
/// </para>
/// <para>
/// Statements under the same condition are compared; where no two share one, those of which one gives none; other conditions are not compared. Under
/// one condition covering is transitive, and a part without contradicting statements covers itself.
/// </para>
/// </remarks>
/// <param name="Kind">What was compared.</param>
/// <param name="Outcome">What came out.</param>
/// <param name="Words">The comparison in words, with both values as far as they are known.</param>
public sealed record RatingCover(RatingKind Kind, RatingCoverKind Outcome, string Words)
{
    // Two ways of writing one number differ in the last bit.
    private const double Rounding = 1e-9;

    /// <summary>Compares one kind.</summary>
    /// <param name="kind">What is compared; the statements are all of it.</param>
    /// <param name="direction">The direction in which it covers; <see cref="CoverDirection.NotCompared"/> throws.</param>
    /// <param name="needed">What is stated of the part in place; empty where not known.</param>
    /// <param name="offered">What is stated of the stand-in; empty where not known.</param>
    public static RatingCover Of(RatingKind kind, CoverDirection direction, IReadOnlyList<StatedRating> needed, IReadOnlyList<StatedRating> offered)
    {
        ArgumentNullException.ThrowIfNull(needed);
        ArgumentNullException.ThrowIfNull(offered);
        ArgumentOutOfRangeException.ThrowIfEqual((int)direction, (int)CoverDirection.NotCompared, nameof(direction));
        if (needed.Count == 0 || offered.Count == 0)
        {
            var whose = (needed.Count, offered.Count) switch { (0, 0) => "not known of either", (0, _) => "not known of this one", _ => "not known" };
            return new(kind, RatingCoverKind.NotKnown, $"{kind.Word()} {whose}");
        }

        var pairs = Pairs(needed, offered, (one, other) => one == other);
        var isLoose = pairs.Count == 0;
        if (isLoose)
            pairs = Pairs(needed, offered, (one, other) => one.Length == 0 || other.Length == 0);
        if (pairs.Count == 0)
            return new(kind, RatingCoverKind.NotKnown, $"{kind.Word()} is stated under other conditions, {needed[0].Condition} and {offered[0].Condition}, and not compared");
        var outcome = pairs.Max(pair => Compare(direction, pair.Needed.Value, pair.Offered.Value));
        return new(kind, outcome, Describe(kind, direction, outcome, pairs, isLoose));
    }

    private static List<(StatedRating Needed, StatedRating Offered)> Pairs(IReadOnlyList<StatedRating> needed, IReadOnlyList<StatedRating> offered, Func<string, string, bool> agree) =>
        [.. needed.SelectMany(one => offered.Where(other => agree(one.ConditionKey, other.ConditionKey)).Select(other => (one, other)))];

    private static RatingCoverKind Compare(CoverDirection direction, Interval needed, Interval offered)
    {
        switch (direction)
        {
            case CoverDirection.AtLeast:
                return offered.Low >= needed.Low - Slack(needed.Low) ? RatingCoverKind.Covers : RatingCoverKind.FallsShort;
            case CoverDirection.AtMost:
                return offered.High <= needed.High + Slack(needed.High) ? RatingCoverKind.Covers : RatingCoverKind.FallsShort;
            default:
                if (HasSpread(needed) && HasSpread(offered))
                    return offered.Low >= needed.Low - Slack(needed.Low) && offered.High <= needed.High + Slack(needed.High) ? RatingCoverKind.Covers : RatingCoverKind.FallsShort;
                var isEqual = Math.Abs(offered.Nominal - needed.Nominal) <= Slack(needed.Nominal);
                return !isEqual ? RatingCoverKind.FallsShort : HasSpread(needed) == HasSpread(offered) ? RatingCoverKind.Covers : RatingCoverKind.NotKnown;
        }
    }

    private static string Describe(RatingKind kind, CoverDirection direction, RatingCoverKind outcome, List<(StatedRating Needed, StatedRating Offered)> pairs, bool isLoose)
    {
        // The pair that decides: the highest demand and the lowest guarantee.
        var (needed, offered) = direction switch
        {
            CoverDirection.AtLeast => (pairs.Max(pair => pair.Needed.Value.Low), pairs.Min(pair => pair.Offered.Value.Low)),
            CoverDirection.AtMost => (pairs.Min(pair => pair.Needed.Value.High), pairs.Max(pair => pair.Offered.Value.High)),
            _ => (0, 0),
        };
        var words = direction switch
        {
            CoverDirection.AtLeast => $"{Text(offered)} where at least {Text(needed)} is needed",
            CoverDirection.AtMost => $"{Text(offered)} where at most {Text(needed)} is needed",
            _ => Within(),
        };
        return $"{kind.Word()}: {words}{Condition()}";

        string Text(double value) => QuantityText.Of(value, kind.Unit());

        string Within()
        {
            var (one, other) = pairs.MaxBy(pair => Compare(direction, pair.Needed.Value, pair.Offered.Value));
            return $"{Span(other.Value)} where {Span(one.Value)} is needed{(outcome == RatingCoverKind.NotKnown ? ", the tolerance of one is not known" : "")}";
        }

        string Span(Interval value) => HasSpread(value) ? $"{Text(value.Nominal)} ({Text(value.Low)} to {Text(value.High)})" : Text(value.Nominal);

        string Condition() => isLoose ? " (condition not given for both)" : pairs[0].Needed.Condition is { } condition && pairs.TrueForAll(pair => pair.Needed.ConditionKey == pairs[0].Needed.ConditionKey) ? $" ({condition.Trim()})" : "";
    }

    private static bool HasSpread(Interval value) => value.Low < value.High;

    private static double Slack(double value) => Math.Abs(value) * Rounding;
}
