using System.Data;
using Catalogue.Data.Families;
using Catalogue.Domain.Components;
using Catalogue.Domain.Consistency;
using Catalogue.Domain.Families;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Teardowns;

/// <summary>Reads one revision whole, from one snapshot of the database.</summary>
/// <param name="contexts">Makes the context of each query.</param>
public sealed class TeardownRecordQuery(IDbContextFactory<CatalogueContext> contexts)
{
    /// <summary>The revision that readers see now, or null.</summary>
    public Task<TeardownRecord?> PublishedAsync(string slug, CancellationToken cancellationToken = default) =>
        RunAsync(slug, revisions => revisions.Where(row => row.State == RevisionState.Published), cancellationToken);

    /// <summary>The draft, or null when there is none.</summary>
    public Task<TeardownRecord?> DraftAsync(string slug, CancellationToken cancellationToken = default) =>
        RunAsync(slug, revisions => revisions.Where(row => row.State == RevisionState.Draft || row.State == RevisionState.InReview), cancellationToken);

    /// <summary>The draft or, without one, what is published: what the lab works on.</summary>
    public Task<TeardownRecord?> LatestAsync(string slug, CancellationToken cancellationToken = default) =>
        RunAsync(slug, revisions => revisions.OrderByDescending(row => row.Number).Take(1), cancellationToken);

    /// <summary>A revision that is or was published, by its number, or null.</summary>
    public Task<TeardownRecord?> RevisionAsync(string slug, int number, CancellationToken cancellationToken = default) =>
        RunAsync(
            slug,
            revisions => revisions.Where(row => row.Number == number && (row.State == RevisionState.Published || row.State == RevisionState.Superseded)),
            cancellationToken);

    private async Task<TeardownRecord?> RunAsync(string slug, Func<IQueryable<Revision>, IQueryable<Revision>> choose, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        context.ChangeTracker.QueryTrackingBehavior = QueryTrackingBehavior.NoTracking;
        await using var transaction = await context.Database.BeginTransactionAsync(IsolationLevel.RepeatableRead, cancellationToken);
        if (await context.Teardowns.SingleOrDefaultAsync(row => row.Slug == slug, cancellationToken) is not { } teardown)
            return null;
        if (await choose(context.Revisions.Where(row => row.TeardownId == teardown.Id)).SingleOrDefaultAsync(cancellationToken) is not { } revision)
            return null;

        var id = revision.Id;
        var facts = await Figures.RecomputeFigures.FactsAsync(context, id, cancellationToken);
        var boards = await context.Boards.Where(row => row.RevisionId == id).OrderBy(row => row.Position).ThenBy(row => row.Id).ToListAsync(cancellationToken);
        var currentFamilies = await context.FamilyLinks.Where(row => row.RevisionId == id).ToDictionaryAsync(row => row.ComponentId, row => row.FamilyId, cancellationToken);
        var order = boards.Select((board, index) => (board.Id, index)).ToDictionary(pair => pair.Id, pair => pair.index);
        return new TeardownRecord
        {
            Slug = teardown.Slug,
            Id = teardown.Id,
            Number = teardown.Number,
            Revision = revision,
            Boards = boards,
            Components = [.. facts.Components.OrderBy(row => order[row.BoardId]).ThenBy(row => row.Position).ThenBy(row => row.Id.Value)],
            Ratings = facts.Ratings,
            Rails = facts.Rails,
            RailQuantities = facts.RailQuantities,
            DischargeReadings = await context.DischargeReadings.Where(row => row.RevisionId == id).OrderBy(row => row.Position).ThenBy(row => row.Id).ToListAsync(cancellationToken),
            IsolationPaths = await context.IsolationPaths.Where(row => row.RevisionId == id).OrderBy(row => row.Position).ThenBy(row => row.Id).ToListAsync(cancellationToken),
            Photos = await context.Photos.Where(row => row.RevisionId == id).OrderBy(row => row.Position).ThenBy(row => row.Id).ToListAsync(cancellationToken),
            Callouts = await context.Callouts.Where(row => row.RevisionId == id).OrderBy(row => row.Number).ThenBy(row => row.Id).ToListAsync(cancellationToken),
            Ports = facts.Ports,
            Claims = await context.Claims.Where(row => row.RevisionId == id).OrderBy(row => row.Position).ThenBy(row => row.Id).ToListAsync(cancellationToken),
            Tests = await context.BenchTests.Where(row => row.RevisionId == id).OrderBy(row => row.Position).ThenBy(row => row.Id).ToListAsync(cancellationToken),
            Steps = await context.Steps.Where(row => row.RevisionId == id).OrderBy(row => row.Position).ThenBy(row => row.Id).ToListAsync(cancellationToken),
            Findings = await context.Findings.Where(row => row.RevisionId == id).OrderBy(row => row.Position).ThenBy(row => row.Id).ToListAsync(cancellationToken),
            Figures = await context.Figures.Where(row => row.RevisionId == id).OrderBy(row => row.Rule).ThenBy(row => row.ComponentId).ToListAsync(cancellationToken),
            CurrentFigures = await context.CurrentFigures.Where(row => row.RevisionId == id).OrderBy(row => row.Rule).ThenBy(row => row.ComponentId).ToListAsync(cancellationToken),
            Families = await FamiliesAsync(context, id, cancellationToken),
            MovedFamilies = await MovedAsync(context, id, cancellationToken),
            CurrentFamilies = currentFamilies,
            FamilyRatings = await FamilyRatingsAsync(context, teardown.Id, [.. currentFamilies.Values.Distinct()], cancellationToken),
            Publications = await context.Publications
                .Where(row => row.TeardownId == teardown.Id)
                .Join(context.Revisions, row => row.RevisionId, row => row.Id, (publication, row) => new { row.Number, row.State, Publication = publication })
                .OrderByDescending(row => row.Number)
                .Select(row => new TeardownRecord.PublishedRevision(row.Number, row.State, row.Publication))
                .ToListAsync(cancellationToken),
        };
    }

    private static async Task<IReadOnlyList<ConsistencyFacts.FamilyRating>> FamilyRatingsAsync(CatalogueContext context, TeardownId teardown, List<FamilyId> families, CancellationToken cancellationToken)
    {
        // Only ids that are known when the plan is made lead into both halves of the view.
        var members = await context.Families.MembersOf(families).Select(row => row.Id).ToListAsync(cancellationToken);
        var rows = await context.FamilyLinks
            .Where(row => members.Contains(row.LinkedFamilyId))
            .Join(context.Ratings, link => new { link.RevisionId, link.ComponentId }, rating => new { rating.RevisionId, rating.ComponentId }, (link, rating) => new { Rating = rating, link.FamilyId })
            .Join(context.Revisions.Where(row => row.State == RevisionState.Published && row.TeardownId != teardown), row => row.Rating.RevisionId, row => row.Id, (row, other) => new { row.Rating.Kind, row.Rating.Nominal, row.FamilyId, other.TeardownId })
            .GroupBy(row => new { row.FamilyId, row.Kind })
            .Select(group => new { group.Key.FamilyId, group.Key.Kind, Low = group.Min(row => row.Nominal), High = group.Max(row => row.Nominal), Teardowns = group.Select(row => row.TeardownId).Distinct().Count() })
            .ToListAsync(cancellationToken);
        return rows.ConvertAll(row => new ConsistencyFacts.FamilyRating(row.FamilyId, row.Kind, row.Low, row.High, row.Teardowns));
    }

    private static async Task<IReadOnlyDictionary<FamilyId, TeardownRecord.FamilyName>> FamiliesAsync(CatalogueContext context, RevisionId revision, CancellationToken cancellationToken)
    {
        var linked = context.Components.Where(row => row.RevisionId == revision && row.FamilyId != null).Select(row => row.FamilyId!.Value).Distinct();
        var rows = await context.Families
            .Where(row => linked.Contains(row.Id))
            .Select(row => new { row.Id, row.Slug, row.Name, Target = row.MergedIntoId == null ? null : context.Families.Single(target => target.Id == row.MergedIntoId) })
            .ToListAsync(cancellationToken);
        return rows.ToDictionary(
            row => row.Id, row => new TeardownRecord.FamilyName(row.Slug, row.Name) { Now = row.Target is { } target ? new TeardownRecord.FamilyName(target.Slug, target.Name) : null });
    }

    private static Task<Dictionary<ComponentId, TeardownRecord.FamilyName>> MovedAsync(CatalogueContext context, RevisionId revision, CancellationToken cancellationToken) =>
        context.FamilyMoves
            .Where(row => row.RevisionId == revision)
            .Join(context.Families, row => row.FamilyId, family => family.Id, (row, family) => new { row.ComponentId, Id = family.MergedIntoId ?? family.Id })
            .Join(context.Families, row => row.Id, family => family.Id, (row, family) => new { row.ComponentId, family.Slug, family.Name })
            .ToDictionaryAsync(row => row.ComponentId, row => new TeardownRecord.FamilyName(row.Slug, row.Name), cancellationToken);
}
