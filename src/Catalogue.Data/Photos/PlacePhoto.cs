using Catalogue.Data.Teardowns;
using Catalogue.Domain.Photos;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Photos;

/// <summary>
/// Puts a picture that was taken in where it belongs, in one change: onto a board, which is added where it is new, or to a step. The same content
/// twice is one photo, so that a batch that was broken off can be begun again.
/// </summary>
/// <param name="contexts">Makes the context of look-ups.</param>
/// <param name="drafts">The door to drafts.</param>
/// <param name="clock">Tells the time.</param>
public sealed class PlacePhoto(IDbContextFactory<CatalogueContext> contexts, DraftEditing drafts, TimeProvider clock)
{
    /// <summary>A picture in its place.</summary>
    /// <param name="Id">The photo.</param>
    /// <param name="Number">Its number as printed.</param>
    /// <param name="FileName">The name under which it came, or null.</param>
    /// <param name="WasThere">True where the teardown had a photo of this very content; nothing was changed then.</param>
    public sealed record Placed(PhotoId Id, int Number, string? FileName, bool WasThere);

    /// <summary>Puts it there.</summary>
    /// <param name="teardown">The teardown.</param>
    /// <param name="file">The picture; its file is in the media store.</param>
    /// <param name="place">Where it goes. A step that has a photo keeps it.</param>
    /// <param name="who">Who adds it.</param>
    /// <param name="cancellationToken">Cancels the change as a whole.</param>
    public async Task<ChangeOutcome<Placed>> RunAsync(TeardownId teardown, PhotoChanges.TakenIn file, PhotoPlace place, Editor who, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(file);
        ArgumentNullException.ThrowIfNull(place);
        var check = new FormCheck();
        var caption = check.May(place.Caption, "caption", Photo.MaxCaptionLength);
        var newBoard = check.May(place.NewBoard, "new_board", Board.MaxNameLength);
        if (check.Refusal is { } refusal)
            return new ChangeOutcome<Placed>.Refused(refusal.Field, refusal.Reason);
        // Asked without the lock first: a picture that is there opens no draft.
        await using (var context = await contexts.CreateDbContextAsync(cancellationToken))
        {
            var latest = await context.Revisions.Where(row => row.TeardownId == teardown).OrderByDescending(row => row.Number).Select(row => (RevisionId?)row.Id).FirstOrDefaultAsync(cancellationToken);
            if (latest is { } revision && await FindAsync(context, revision, file.Sha256, cancellationToken) is { } there)
                return new ChangeOutcome<Placed>.Done(there);
        }

        return await drafts.EditAsync<Placed>(
            teardown,
            who,
            "add photo",
            async (draft, cancel) =>
            {
                if (await FindAsync(draft.Context, draft.Revision.Id, file.Sha256, cancel) is { } there)
                    return new ChangeOutcome<Placed>.Done(there);
                var board = newBoard is null ? place.BoardId : await BoardNamedAsync(draft, newBoard, cancel);
                if (board is { } known && newBoard is null && !await draft.Context.Boards.AnyAsync(row => row.RevisionId == draft.Revision.Id && row.Id == known, cancel))
                    return new ChangeOutcome<Placed>.Refused("board", $"There is no board {known} in the draft.");
                var position = (await draft.Context.Photos.Where(row => row.RevisionId == draft.Revision.Id).MaxAsync(row => (int?)row.Position, cancel) ?? -1) + 1;
                var photo = await PhotoChanges.MakeAsync(draft, file, clock.GetUtcNow(), position, cancel);
                (photo.Subject, photo.BoardId, photo.Caption) = (place.Subject, board, caption);
                draft.Context.Add(photo);
                if (place is { Subject: PhotoSubject.Step, Step: { } step }
                    && await draft.Context.Steps.SingleOrDefaultAsync(row => row.RevisionId == draft.Revision.Id && row.Position == step - 1 && row.PhotoId == null, cancel) is { } record)
                {
                    record.PhotoId = photo.Id;
                }

                return new ChangeOutcome<Placed>.Done(new Placed(photo.Id, photo.Position + 1, photo.FileName, false));
            },
            placed => placed.Id.Value,
            cancellationToken);
    }

    private static async Task<Placed?> FindAsync(CatalogueContext context, RevisionId revision, string sha256, CancellationToken cancellationToken) =>
        await context.Photos.AsNoTracking().Where(row => row.RevisionId == revision && row.Sha256 == sha256).OrderBy(row => row.Position).FirstOrDefaultAsync(cancellationToken) is { } there
            ? new Placed(there.Id, there.Position + 1, there.FileName, true)
            : null;

    private static async Task<BoardId> BoardNamedAsync(Draft draft, string name, CancellationToken cancellationToken)
    {
        var boards = await draft.Context.Boards.Where(row => row.RevisionId == draft.Revision.Id).OrderBy(row => row.Position).ToListAsync(cancellationToken);
        if (boards.Find(row => string.Equals(row.Name, name, StringComparison.OrdinalIgnoreCase)) is { } there)
            return there.Id;
        var board = new Board { RevisionId = draft.Revision.Id, Id = BoardId.New(), Position = boards.Count == 0 ? 0 : boards[^1].Position + 1, Name = name };
        draft.Context.Add(board);
        return board.Id;
    }
}
