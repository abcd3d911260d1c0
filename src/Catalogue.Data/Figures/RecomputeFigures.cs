using Catalogue.Domain.Figures;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Figures;

/// <summary>Computes the figures of a draft anew, in the transaction of the edit that changes them.</summary>
internal static class RecomputeFigures
{
    public static async Task RunAsync(CatalogueContext context, RevisionId revision, CancellationToken cancellationToken)
    {
        var facts = await FactsAsync(context, revision, cancellationToken);
        await context.Figures.Where(figure => figure.RevisionId == revision).ExecuteDeleteAsync(cancellationToken);
        context.Figures.AddRange(RevisionFigures.Compute(revision, facts));
        await context.SaveChangesAsync(cancellationToken);
    }

    public static async Task<RevisionFacts> FactsAsync(CatalogueContext context, RevisionId revision, CancellationToken cancellationToken) => new(
        await context.Components.AsNoTracking().Where(row => row.RevisionId == revision).OrderBy(row => row.BoardId).ThenBy(row => row.Position).ThenBy(row => row.Id).ToListAsync(cancellationToken),
        await context.Ratings.AsNoTracking().Where(row => row.RevisionId == revision).OrderBy(row => row.Id).ToListAsync(cancellationToken),
        await context.Rails.AsNoTracking().Where(row => row.RevisionId == revision).OrderBy(row => row.Position).ThenBy(row => row.Id).ToListAsync(cancellationToken),
        await context.RailQuantities.AsNoTracking().Where(row => row.RevisionId == revision).OrderBy(row => row.Id).ToListAsync(cancellationToken));
}
