using Catalogue.Domain.Figures;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Figures;

/// <summary>Computes the figures of a draft anew, in the transaction of the edit that changes them.</summary>
internal static class RecomputeFigures
{
    public static async Task<int> RunAsync(CatalogueContext context, RevisionId revision, CancellationToken cancellationToken)
    {
        var facts = await FactsAsync(context, revision, cancellationToken);
        var figures = RevisionFigures.Compute(revision, facts, await LinesAsync(context, cancellationToken));
        await context.Figures.Where(figure => figure.RevisionId == revision).ExecuteDeleteAsync(cancellationToken);
        return await context.WriteAsync(figures, cancellationToken);
    }

    /// <summary>The lines that the lab holds figures against.</summary>
    public static async Task<LineTable> LinesAsync(CatalogueContext context, CancellationToken cancellationToken) =>
        (await context.LabSettings.AsNoTracking().SingleAsync(cancellationToken)).LineTable;

    public static async Task<RevisionFacts> FactsAsync(CatalogueContext context, RevisionId revision, CancellationToken cancellationToken) => new(
        await context.Components.AsNoTracking().Where(row => row.RevisionId == revision).OrderBy(row => row.BoardId).ThenBy(row => row.Position).ThenBy(row => row.Id).ToListAsync(cancellationToken),
        await context.Ratings.AsNoTracking().Where(row => row.RevisionId == revision).OrderBy(row => row.Id).ToListAsync(cancellationToken),
        await context.Rails.AsNoTracking().Where(row => row.RevisionId == revision).OrderBy(row => row.Position).ThenBy(row => row.Id).ToListAsync(cancellationToken),
        await context.RailQuantities.AsNoTracking().Where(row => row.RevisionId == revision).OrderBy(row => row.Id).ToListAsync(cancellationToken))
    {
        Ports = await context.Ports.AsNoTracking().Where(row => row.RevisionId == revision).OrderBy(row => row.Position).ThenBy(row => row.Id).ToListAsync(cancellationToken),
        CellChemistry = await context.Revisions.Where(row => row.Id == revision).Select(row => row.CellChemistry).SingleAsync(cancellationToken),
    };
}
