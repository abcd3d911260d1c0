using Catalogue.Domain.Components;
using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Families;

/// <summary>What is stated of a family: a typical rating, or one that a published teardown gives.</summary>
/// <param name="Kind">What it speaks of; an ac voltage is always <see cref="RatingKind.RatedVoltageAc"/>.</param>
/// <param name="Value">The value in the kind's unit; its worse end is what the part is good for.</param>
/// <param name="Condition">The condition it holds under, or null.</param>
public sealed record StatedRating(RatingKind Kind, Interval Value, string? Condition = null)
{
    /// <summary>What two spellings of one condition share; empty where none is given.</summary>
    public string ConditionKey => string.Join(' ', (Condition ?? "").ToUpperInvariant().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    /// <summary>
    /// A rating as stated, or null where it states none: what was measured on one sample, guessed, or judged for one design binds no other part.
    /// </summary>
    /// <param name="kind">What it speaks of.</param>
    /// <param name="value">The value in the kind's unit.</param>
    /// <param name="condition">The condition, or null.</param>
    /// <param name="evidence">How it is known.</param>
    public static StatedRating? From(RatingKind kind, Interval value, string? condition, Evidence evidence) =>
        evidence is Evidence.Measured or Evidence.Guess || kind.IsInUse() || kind is RatingKind.Derating
            ? null
            : new StatedRating(kind is RatingKind.RatedVoltage && kind.IsForAc(condition) ? RatingKind.RatedVoltageAc : kind, value, condition);

    /// <summary>How far apart two ratings may be stated and still be the same: 2 %. House rule.</summary>
    public const double Slack = 0.02;

    /// <summary>True where two of the values are further apart than <see cref="Slack"/>; intervals that meet agree. False for fewer than two.</summary>
    public static bool Disagree(IReadOnlyCollection<Interval> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        return values.Count > 1 && values.Max(value => value.Low) > values.Min(value => value.High) * (1 + Slack);
    }

    /// <summary>The ratings of a family: the typical one of each kind where there is one, else all that teardowns give.</summary>
    public static IReadOnlyList<StatedRating> Choose(IReadOnlyList<StatedRating> typical, IEnumerable<StatedRating> published)
    {
        ArgumentNullException.ThrowIfNull(typical);
        ArgumentNullException.ThrowIfNull(published);
        var settled = typical.Select(rating => rating.Kind).ToHashSet();
        return [.. typical, .. published.Where(rating => !settled.Contains(rating.Kind)).Distinct()];
    }
}
