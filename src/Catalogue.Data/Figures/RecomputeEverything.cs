using Catalogue.Data.Conversions;
using Catalogue.Data.Queue;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Figures;

/// <summary>
/// Computes all figures by the rules and lines as they stand now: the current figures of published teardowns and those of drafts. Published
/// figures stay as printed.
/// </summary>
/// <param name="contexts">Makes the context of each step.</param>
/// <param name="clock">Tells the time.</param>
public sealed class RecomputeEverything(IDbContextFactory<CatalogueContext> contexts, TimeProvider clock)
{
    /// <summary>The kind of the job that does it in the background; its subject is the stamp it brings figures to.</summary>
    public const string JobKind = "recompute_figures";

    /// <summary>How far it has come.</summary>
    /// <param name="Done">Teardowns done.</param>
    /// <param name="Total">Teardowns in all.</param>
    public sealed record Step(int Done, int Total);

    /// <summary>What was done.</summary>
    /// <param name="Teardowns">Teardowns.</param>
    /// <param name="Figures">Figures computed.</param>
    /// <param name="Changed">Current figures that came out otherwise than before, those that came or went included.</param>
    public sealed record Total(int Teardowns, int Figures, int Changed);

    /// <summary>Puts the job into the queue when figures were computed by other rules or lines than those that stand now.</summary>
    /// <returns>True when there is something to do.</returns>
    public async Task<bool> EnqueueIfStaleAsync(CancellationToken cancellationToken = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        var stamp = FigureRules.Stamp(await RecomputeFigures.LinesAsync(context, cancellationToken));
        if (await context.SiteStates.AnyAsync(row => row.FiguresStamp == stamp, cancellationToken))
            return false;
        await JobQueue.EnqueueAsync(context, JobKind, stamp, clock.GetUtcNow(), cancellationToken);
        return true;
    }

    /// <summary>Recomputes all of them, each teardown in its own transaction; other edits wait for one teardown at most.</summary>
    public async Task<Total> RunAsync(Func<Step, CancellationToken, Task>? progress, CancellationToken cancellationToken = default)
    {
        List<TeardownId> teardowns;
        LineTable lines;
        await using (var context = await contexts.CreateDbContextAsync(cancellationToken))
        {
            teardowns = await context.Teardowns.AsNoTracking().OrderBy(row => row.Id).Select(row => row.Id).ToListAsync(cancellationToken);
            lines = await RecomputeFigures.LinesAsync(context, cancellationToken);
        }

        int figures = 0, changed = 0;
        for (var i = 0; i < teardowns.Count; i++)
        {
            var (count, differing) = await OneAsync(teardowns[i], lines, cancellationToken);
            figures += count;
            changed += differing;
            if (progress is not null)
                await progress(new Step(i + 1, teardowns.Count), cancellationToken);
        }

        await using (var context = await contexts.CreateDbContextAsync(cancellationToken))
            await context.SiteStates.ExecuteUpdateAsync(set => set.SetProperty(row => row.FiguresStamp, FigureRules.Stamp(lines)), cancellationToken);
        return new Total(teardowns.Count, figures, changed);
    }

    private async Task<(int Figures, int Changed)> OneAsync(TeardownId teardown, LineTable lines, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
        await context.Database.ExecuteSqlAsync($"select 1 from teardowns where id = {teardown.Value} for update", cancellationToken);
        var revisions = await context.Revisions.AsNoTracking().Where(row => row.TeardownId == teardown).Select(row => new { row.Id, row.State }).ToListAsync(cancellationToken);
        int figures = 0, changed = 0;
        if (revisions.Find(row => row.State is RevisionState.Draft or RevisionState.InReview) is { } draft)
            figures += await RecomputeFigures.RunAsync(context, draft.Id, cancellationToken);
        if (revisions.Find(row => row.State is RevisionState.Published) is { } published)
        {
            var computed = RevisionFigures.Compute(published.Id, await RecomputeFigures.FactsAsync(context, published.Id, cancellationToken), lines);
            figures += computed.Count;
            changed = Differing(await context.CurrentFigures.AsNoTracking().Where(row => row.RevisionId == published.Id).ToListAsync(cancellationToken), computed);
            if (changed > 0)
            {
                await context.CurrentFigures.Where(row => row.RevisionId == published.Id).ExecuteDeleteAsync(cancellationToken);
                context.CurrentFigures.AddRange(computed.Select(figure => CurrentFigure.From(teardown, figure)));
                await context.SaveChangesAsync(cancellationToken);
            }
        }

        await transaction.CommitAsync(cancellationToken);
        return (figures, changed);
    }

    private static int Differing(List<CurrentFigure> before, IReadOnlyList<Figure> now)
    {
        var old = before.ToDictionary(row => (row.ComponentId, row.RailId, row.Rule));
        var keys = now.Select(figure => (figure.ComponentId, figure.RailId, figure.Rule)).ToHashSet();
        return now.Count(figure => !old.TryGetValue((figure.ComponentId, figure.RailId, figure.Rule), out var row) || !Same(row, figure)) + old.Keys.Count(key => !keys.Contains(key));
    }

    private static bool Same(CurrentFigure old, Figure now) =>
        (old.RuleVersion, old.Low, old.Nominal, old.High, old.Verdict, old.StaticOnly) == (now.RuleVersion, now.Low, now.Nominal, now.High, now.Verdict, now.StaticOnly)
        && StoredJsonConverter<Working>.Comparer.Equals(old.Working, now.Working)
        && StoredJsonConverter<IReadOnlyList<MissingInput>>.Comparer.Equals(old.Missing, now.Missing);
}
