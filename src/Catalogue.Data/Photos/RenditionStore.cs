using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Photos;

/// <summary>What the database knows of picture files and their renditions.</summary>
/// <param name="contexts">Makes the context of each step.</param>
public sealed class RenditionStore(IDbContextFactory<CatalogueContext> contexts)
{
    /// <summary>The file of that hash, or null.</summary>
    public async Task<MediaFile?> FindFileAsync(string sha256, CancellationToken cancellationToken = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await context.MediaFiles.AsNoTracking().SingleOrDefaultAsync(row => row.Sha256 == sha256, cancellationToken);
    }

    /// <summary>Records the renditions of a file, in place of those recorded before.</summary>
    public async Task RecordAsync(string sha256, IReadOnlyList<Rendition> renditions, CancellationToken cancellationToken = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
        await context.Renditions.Where(row => row.Sha256 == sha256).ExecuteDeleteAsync(cancellationToken);
        context.Renditions.AddRange(renditions);
        await context.SaveChangesAsync(cancellationToken);
        await transaction.CommitAsync(cancellationToken);
    }
}
