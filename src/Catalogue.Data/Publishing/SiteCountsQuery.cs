using Catalogue.Domain.Figures;
using Catalogue.Domain.Products;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Publishing;

/// <summary>Counts what is published. Drafts and withdrawn revisions count nowhere.</summary>
/// <param name="contexts">Makes the context of the query.</param>
public sealed class SiteCountsQuery(IDbContextFactory<CatalogueContext> contexts)
{
    /// <summary>What is published.</summary>
    /// <param name="ByCategory">Teardowns of each category; categories without any are left out.</param>
    /// <param name="Components">Component lines, fitted or not, each once whatever its quantity.</param>
    /// <param name="Families">Part families that at least one of them was resolved to; merged ones count as one.</param>
    /// <param name="Makers">Makers whose products they are.</param>
    /// <param name="ByVerdict">Figures at each verdict as published; verdicts without any are left out.</param>
    public sealed record Counts(
        IReadOnlyDictionary<ProductCategory, int> ByCategory, int Components, int Families, int Makers, IReadOnlyDictionary<Verdict, int> ByVerdict)
    {
        /// <summary>Published teardowns.</summary>
        public int Teardowns => ByCategory.Values.Sum();

        /// <summary>Figures with a result; what could not be computed is told apart.</summary>
        public int Computed => ByVerdict.Where(pair => pair.Key is not Verdict.Unknown).Sum(pair => pair.Value);

        /// <summary>Figures of which an input is missing.</summary>
        public int Unknown => ByVerdict.GetValueOrDefault(Verdict.Unknown);
    }

    /// <summary>Counts.</summary>
    public async Task<Counts> RunAsync(CancellationToken cancellationToken = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        var published = context.Revisions.Where(row => row.State == RevisionState.Published);
        var categories = await published.GroupBy(row => row.Category).Select(group => new { group.Key, Count = group.Count() }).ToDictionaryAsync(row => row.Key, row => row.Count, cancellationToken);
        var verdicts = await context.Figures
            .Where(row => row.Verdict != Verdict.NoLine && published.Any(revision => revision.Id == row.RevisionId))
            .GroupBy(row => row.Verdict)
            .Select(group => new { group.Key, Count = group.Count() })
            .ToDictionaryAsync(row => row.Key, row => row.Count, cancellationToken);
        var components = context.Components.Where(row => published.Any(revision => revision.Id == row.RevisionId));
        var families = await context.FamilyLinks
            .Where(row => published.Any(revision => revision.Id == row.RevisionId))
            .Select(row => row.FamilyId)
            .Distinct()
            .CountAsync(cancellationToken);
        var makers = await published
            .Join(context.Teardowns, row => row.TeardownId, row => row.Id, (_, teardown) => teardown.ProductId)
            .Join(context.Products, row => row, product => product.Id, (_, product) => product.BrandId)
            .Distinct()
            .CountAsync(cancellationToken);
        return new Counts(categories, await components.CountAsync(cancellationToken), families, makers, verdicts);
    }
}
