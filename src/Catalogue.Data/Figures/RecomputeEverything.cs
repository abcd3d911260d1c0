using Catalogue.Data.Conversions;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Figures;

/// <summary>Computes the current figures of published teardowns by the rules as they stand now. The published figures stay as printed.</summary>
/// <param name="contexts">Makes the context of each step.</param>
public sealed class RecomputePublished(IDbContextFactory<CatalogueContext> contexts)
{
    /// <summary>How far it has come.</summary>
    /// <param name="Done">Teardowns done.</param>
    /// <param name="Total">Teardowns in all.</param>
    public sealed record Step(int Done, int Total);

    /// <summary>What was done.</summary>
    /// <param name="Teardowns">Teardowns.</param>
    /// <param name="Figures">Figures computed.</param>
    /// <param name="Changed">Figures that came out otherwise than before, those that came or went included.</param>
    public sealed record Total(int Teardowns, int Figures, int Changed);

    /// <summary>Recomputes all of them, each teardown in its own transaction.</summary>
    public async Task<Total> RunAsync(IProgress<Step>? progress, CancellationToken cancellationToken = default)
    {
        List<(TeardownId Teardown, RevisionId Revision)> published;
        await using (var context = await contexts.CreateDbContextAsync(cancellationToken))
        {
            published = (await context.Revisions.AsNoTracking().Where(row => row.State == RevisionState.Published).OrderBy(row => row.Id).Select(row => new { row.TeardownId, row.Id }).ToListAsync(cancellationToken))
                .ConvertAll(row => (row.TeardownId, row.Id));
        }

        int figures = 0, changed = 0;
        for (var i = 0; i < published.Count; i++)
        {
            var (count, differing) = await OneAsync(published[i].Teardown, published[i].Revision, cancellationToken);
            figures += count;
            changed += differing;
            progress?.Report(new Step(i + 1, published.Count));
        }

        return new Total(published.Count, figures, changed);
    }

    private async Task<(int Figures, int Changed)> OneAsync(TeardownId teardown, RevisionId revision, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
        await context.Database.ExecuteSqlAsync($"select 1 from teardowns where id = {teardown.Value} for update", cancellationToken);
        if (!await context.Revisions.AnyAsync(row => row.Id == revision && row.State == RevisionState.Published, cancellationToken))
            return (0, 0);
        var computed = RevisionFigures.Compute(revision, await RecomputeFigures.FactsAsync(context, revision, cancellationToken));
        var before = (await context.CurrentFigures.AsNoTracking().Where(row => row.RevisionId == revision).ToListAsync(cancellationToken))
            .ToDictionary(row => (row.ComponentId, row.Rule));
        var differing = computed.Count(figure => !before.TryGetValue((figure.ComponentId, figure.Rule), out var old) || !Same(old, figure))
            + before.Keys.Count(key => computed.All(figure => (figure.ComponentId, figure.Rule) != key));
        if (differing > 0)
        {
            await context.CurrentFigures.Where(row => row.RevisionId == revision).ExecuteDeleteAsync(cancellationToken);
            context.CurrentFigures.AddRange(computed.Select(figure => CurrentFigure.From(teardown, figure)));
            await context.SaveChangesAsync(cancellationToken);
        }

        await transaction.CommitAsync(cancellationToken);
        return (computed.Count, differing);
    }

    private static bool Same(CurrentFigure old, Figure now) =>
        (old.RuleVersion, old.Low, old.Nominal, old.High, old.Verdict, old.StaticOnly) == (now.RuleVersion, now.Low, now.Nominal, now.High, now.Verdict, now.StaticOnly)
        && StoredJsonConverter<Working>.Comparer.Equals(old.Working, now.Working)
        && StoredJsonConverter<IReadOnlyList<MissingInput>>.Comparer.Equals(old.Missing, now.Missing);
}
