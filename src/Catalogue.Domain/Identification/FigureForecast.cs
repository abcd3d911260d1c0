using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Identification;

/// <summary>Says which figures of a revision would come out differently if a part took over a class and ratings. Nothing is stored.</summary>
/// <param name="facts">The revision's facts as they stand.</param>
/// <param name="lines">The lines that figures are held against.</param>
public sealed class FigureForecast(RevisionFacts facts, LineTable lines)
{
    private Dictionary<(string Rule, Guid Subject), Figure>? _now;

    /// <summary>
    /// The figures whose verdict or value would change, those of the part first; empty where the part is not of the revision or nothing would be taken over.
    /// A figure that would begin to apply and still lack an input is not among them.
    /// </summary>
    /// <param name="component">The part.</param>
    /// <param name="functionClass">The class it would take where it has none, or null.</param>
    /// <param name="ratings">The ratings it would take (<see cref="KnownRating.Missing"/>).</param>
    public IReadOnlyList<FigureChange> Of(ComponentId component, FunctionClass? functionClass, IReadOnlyList<KnownRating> ratings)
    {
        ArgumentNullException.ThrowIfNull(ratings);
        if (facts.Components.FirstOrDefault(row => row.Id == component) is not { } part || (ratings.Count == 0 && (functionClass is null || part.FunctionClass is not null)))
            return [];
        var taken = part.FunctionClass is null && functionClass is { } missing ? part.WithClass(missing) : part;
        var then = Figures(taken, facts with
        {
            Components = [.. facts.Components.Select(row => row.Id == component ? taken : row)],
            Ratings = [.. facts.Ratings, .. ratings.Select(rating => rating.Of(part))],
        });
        var now = _now ??= Figures(part, facts);
        return
        [
            .. now.Keys.Union(then.Keys)
                .Select(key => Change(now.GetValueOrDefault(key), then.GetValueOrDefault(key)))
                .OfType<FigureChange>()
                .OrderBy(change => change.Component != component)
                .ThenBy(change => change.Rule, StringComparer.Ordinal)
                .ThenBy(change => change.Subject, StringComparer.Ordinal)
                .ThenBy(change => change.Component?.Value ?? change.Rail?.Value),
        ];
    }

    private FigureChange? Change(Figure? now, Figure? then)
    {
        var (from, to) = (Value(now), Value(then));
        if ((from is null && to is null) || (now?.Verdict == then?.Verdict && from == to))
            return null;
        var any = (then ?? now)!;
        return new FigureChange(any.Rule, any.ComponentId, any.RailId, Name(any), now?.Verdict, then?.Verdict, from, to, any.Unit);
    }

    private string Name(Figure figure) =>
        figure.ComponentId is { } part ? facts.Components.First(row => row.Id == part).Name : facts.Rails.First(row => row.Id == figure.RailId).Name;

    private static Interval? Value(Figure? figure) => figure is { Low: { } low, Nominal: { } nominal, High: { } high } ? Interval.Create(low, nominal, high) : null;

    private Dictionary<(string, Guid), Figure> Figures(BoardComponent part, RevisionFacts all) =>
        RevisionFigures.Compute(part.RevisionId, all, lines).ToDictionary(figure => (figure.Rule, figure.Subject));
}
