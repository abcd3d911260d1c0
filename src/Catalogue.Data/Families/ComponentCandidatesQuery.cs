using Catalogue.Data.Figures;
using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Identification;
using Catalogue.Domain.Makers;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Families;

/// <summary>Finds the families that a recorded component may belong to, with all that is recorded of it; its own unit and its kin do not count as seen.</summary>
/// <param name="contexts">Makes the context of each query.</param>
/// <param name="candidates">Finds candidates.</param>
public sealed class ComponentCandidatesQuery(IDbContextFactory<CatalogueContext> contexts, MarkingCandidatesQuery candidates)
{
    /// <summary>What was asked, and what was found.</summary>
    /// <param name="Question">What was read and is known of the part; null where nothing was read on it.</param>
    /// <param name="Offers">The candidates, best first.</param>
    /// <param name="Number">The number that a family may be opened for where none of them is it; null where a whole number was not read.</param>
    public sealed record Answer(MarkingQuestion? Question, IReadOnlyList<Offer> Offers, string? Number);

    /// <summary>A family that the part may belong to, and what taking it would bring.</summary>
    /// <param name="Found">The family.</param>
    /// <param name="Ratings">Ratings known for it that the part has none of.</param>
    /// <param name="WouldChange">The figures that they and the family's class would change.</param>
    public sealed record Offer(MarkingCandidatesQuery.Found Found, IReadOnlyList<KnownRating> Ratings, IReadOnlyList<FigureChange> WouldChange);

    /// <summary>The candidates of a component of a draft, or, with no draft, of the last revision; null where there is no such component.</summary>
    public async Task<Answer?> RunAsync(ComponentId id, CancellationToken cancellationToken = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        var found = await context.Components
            .AsNoTracking()
            .Where(row => row.Id == id)
            .Join(context.Revisions, row => row.RevisionId, row => row.Id, (component, revision) => new { Component = component, revision.TeardownId, revision.Number })
            .OrderByDescending(row => row.Number)
            .FirstOrDefaultAsync(cancellationToken);
        return found is null
            ? null
            : await RunAsync(found.Component, found.TeardownId, await RecomputeFigures.FactsAsync(context, found.Component.RevisionId, cancellationToken), MarkingCandidates.MaxCandidates, cancellationToken);
    }

    /// <summary>The candidates of a component as it is in hand.</summary>
    /// <param name="component">The component; its texts may be newer than what is stored.</param>
    /// <param name="teardown">Its teardown.</param>
    /// <param name="facts">The facts of its revision.</param>
    /// <param name="limit">The most candidates.</param>
    /// <param name="cancellationToken">Cancels the query.</param>
    public async Task<Answer> RunAsync(BoardComponent component, TeardownId teardown, RevisionFacts facts, int limit, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(component);
        ArgumentNullException.ThrowIfNull(facts);
        if (QuestionOf(component) is not { } question)
            return new Answer(null, [], null);
        var found = await candidates.RunAsync(question, new MarkingCandidatesQuery.Place(teardown, component.BoardId), seesDrafts: true, cancellationToken);
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        var shown = found.Take(limit).ToList();
        var known = await KnownRatings.OfAsync(context, shown.ConvertAll(one => one.Candidate.Family.Id), component.Id, cancellationToken);
        var forecast = new FigureForecast(facts, await RecomputeFigures.LinesAsync(context, cancellationToken));
        var own = facts.Ratings.Where(rating => rating.ComponentId == component.Id).ToList();
        var offers = shown.ConvertAll(one =>
        {
            var ratings = KnownRating.Missing(known.GetValueOrDefault(one.Candidate.Family.Id) ?? [], own);
            return new Offer(one, ratings, forecast.Of(component.Id, one.Candidate.Family.FunctionClass, ratings));
        });
        return new Answer(question, offers, NumberOf(component, question));
    }

    /// <summary>The number that a family may be opened for; null where none was read whole.</summary>
    internal static string? NumberOf(BoardComponent component, MarkingQuestion question) =>
        new[] { component.PartNumber }
            .Concat(MarkingReadings.Of(question.Marking, maker => question.Maker == maker).Select(reading => reading.Text))
            .FirstOrDefault(text => IdentifyComponent.Read(text) is not null);

    /// <summary>What is asked of a component; null where neither a letter nor a digit was read on it.</summary>
    internal static MarkingQuestion? QuestionOf(BoardComponent component) =>
        PartText.Of(component) is { Length: <= MarkingReadings.MaxMarkingLength } marking && MarkingFold.Line(marking).Any(char.IsAsciiLetterOrDigit)
            ? new MarkingQuestion
            {
                Marking = marking,
                Package = component.Package,
                FunctionClass = component.FunctionClass ?? FunctionClassText.Read(component.Role),
                Maker = MakerName.Key(component.MakerAsRead) is { Length: > 0 } maker ? maker : null,
            }
            : null;
}
