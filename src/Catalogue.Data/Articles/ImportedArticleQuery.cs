using System.Security.Cryptography;
using System.Text;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Articles;

/// <summary>Finds articles that teardowns were opened from.</summary>
/// <param name="contexts">Makes the context of each query.</param>
public sealed class ImportedArticleQuery(IDbContextFactory<CatalogueContext> contexts)
{
    /// <summary>The article of a teardown, or null.</summary>
    public async Task<ImportedArticle?> OfAsync(string slug, CancellationToken cancellationToken = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await context.ImportedArticles.AsNoTracking().SingleOrDefaultAsync(row => context.Teardowns.Any(teardown => teardown.Id == row.TeardownId && teardown.Slug == slug), cancellationToken);
    }

    /// <summary>The address of the first teardown that was opened from this very text by another run, or null.</summary>
    public async Task<string?> SameAsync(string text, Guid run, CancellationToken cancellationToken = default)
    {
        var hash = HashOf(text);
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await context.ImportedArticles.Where(row => row.Sha256 == hash && row.RunId != run).OrderBy(row => row.ImportedAt)
            .Join(context.Teardowns, row => row.TeardownId, teardown => teardown.Id, (_, teardown) => teardown.Slug)
            .FirstOrDefaultAsync(cancellationToken);
    }

    internal static string HashOf(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));
}
