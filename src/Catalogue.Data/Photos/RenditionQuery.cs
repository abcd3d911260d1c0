using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Photos;

/// <summary>Finds a rendition for a reader: of published photos for everybody, of any photo for those who may see drafts.</summary>
/// <param name="contexts">Makes the context of each query.</param>
public sealed class RenditionQuery(IDbContextFactory<CatalogueContext> contexts)
{
    /// <summary>What there is of a rendition.</summary>
    public abstract record Answer
    {
        private Answer()
        {
        }

        /// <summary>It is there.</summary>
        /// <param name="Rendition">The rendition.</param>
        /// <param name="IsPublic">True when a published revision shows the picture.</param>
        public sealed record Found(Rendition Rendition, bool IsPublic) : Answer;

        /// <summary>The reader may see the picture, but the queue has not made this width yet.</summary>
        public sealed record NotYet : Answer;

        /// <summary>There is nothing the reader may see.</summary>
        public sealed record Nothing : Answer;
    }

    /// <summary>Finds one.</summary>
    /// <param name="sha256">The original's SHA-256.</param>
    /// <param name="widthPixels">The width asked for.</param>
    /// <param name="seesDrafts">True for people and tokens that may see drafts.</param>
    /// <param name="cancellationToken">Cancels the query.</param>
    public async Task<Answer> RunAsync(string sha256, int widthPixels, bool seesDrafts, CancellationToken cancellationToken = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        var isPublic = await context.Photos
            .Where(row => row.Sha256 == sha256)
            .AnyAsync(row => context.Revisions.Any(revision => revision.Id == row.RevisionId && (revision.State == RevisionState.Published || revision.State == RevisionState.Superseded)), cancellationToken);
        if (!isPublic && !(seesDrafts && await context.MediaFiles.AnyAsync(row => row.Sha256 == sha256, cancellationToken)))
            return new Answer.Nothing();
        var rendition = await context.Renditions.AsNoTracking().SingleOrDefaultAsync(row => row.Sha256 == sha256 && row.WidthPixels == widthPixels, cancellationToken);
        if (rendition is not null)
            return new Answer.Found(rendition, isPublic);
        var width = await context.MediaFiles.Where(row => row.Sha256 == sha256).Select(row => row.WidthPixels).SingleAsync(cancellationToken);
        return Domain.Photos.RenditionWidths.For(width).Contains(widthPixels) ? new Answer.NotYet() : new Answer.Nothing();
    }
}
