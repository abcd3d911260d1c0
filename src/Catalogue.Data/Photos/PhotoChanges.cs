using Catalogue.Data.Queue;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Photos;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Photos;

/// <summary>Photos of drafts. The file is in the media store before its row is written.</summary>
/// <param name="contexts">Makes the context of look-ups.</param>
/// <param name="drafts">The door to drafts.</param>
/// <param name="clock">Tells the time.</param>
public sealed class PhotoChanges(IDbContextFactory<CatalogueContext> contexts, DraftEditing drafts, TimeProvider clock)
    : RecordChanges<Photo, PhotoId, PhotoForm>(contexts, drafts)
{
    /// <summary>The kind of job that makes renditions; its subject is the original's SHA-256.</summary>
    public const string MakeRenditions = "make_renditions";

    /// <summary>A picture file that was taken in.</summary>
    /// <param name="Sha256">The original's SHA-256, lower-case hex.</param>
    /// <param name="Kind"><c>jpeg</c>, <c>png</c> or <c>webp</c>.</param>
    /// <param name="Bytes">Its size.</param>
    /// <param name="WidthPixels">Width of the upright picture.</param>
    /// <param name="HeightPixels">Height of the upright picture.</param>
    /// <param name="FileName">Its name as it came, or null.</param>
    public sealed record TakenIn(string Sha256, string Kind, long Bytes, int WidthPixels, int HeightPixels, string? FileName);

    /// <inheritdoc />
    public override string Noun => "photo";

    /// <summary>True when the latest revision of a teardown has that board; asked before a picture is taken in for it.</summary>
    public async Task<bool> HasBoardAsync(TeardownId teardown, BoardId board, CancellationToken cancellationToken = default)
    {
        await using var context = await Contexts.CreateDbContextAsync(cancellationToken);
        return await context.Boards.AnyAsync(
            row => row.Id == board && context.Revisions.Any(revision => revision.Id == row.RevisionId && revision.TeardownId == teardown
                && revision.Number == context.Revisions.Where(other => other.TeardownId == teardown).Max(other => other.Number)),
            cancellationToken);
    }

    /// <summary>Adds a picture that was taken in, and queues its renditions.</summary>
    public Task<ChangeOutcome<PhotoId>> AddAsync(TeardownId teardown, TakenIn file, PhotoForm form, Editor who, CancellationToken cancellationToken = default) =>
        AddAsync(
            teardown,
            form,
            who,
            async (draft, cancel) => await MakeAsync(
                draft, file, clock.GetUtcNow(), await NextPositionAsync(draft.Context.Photos.Where(row => row.RevisionId == draft.Revision.Id), row => row.Position, cancel), cancel),
            row => row.Id,
            cancellationToken);

    /// <summary>The record of a picture that was taken in, not yet added to the draft; its renditions are queued.</summary>
    internal static async Task<Photo> MakeAsync(Draft draft, TakenIn file, DateTimeOffset now, int position, CancellationToken cancellationToken)
    {
        await draft.Context.Database.ExecuteSqlAsync(
            $"""
            insert into media_files (sha256, kind, bytes, width_pixels, height_pixels, received_at)
            values ({file.Sha256}, {file.Kind}, {file.Bytes}, {file.WidthPixels}, {file.HeightPixels}, {now})
            on conflict (sha256) do nothing
            """,
            cancellationToken);
        if (!await draft.Context.Renditions.AnyAsync(row => row.Sha256 == file.Sha256, cancellationToken))
            await JobQueue.EnqueueAsync(draft.Context, MakeRenditions, file.Sha256, now, cancellationToken);
        return new Photo
        {
            RevisionId = draft.Revision.Id,
            Id = PhotoId.New(),
            Sha256 = file.Sha256,
            WidthPixels = file.WidthPixels,
            HeightPixels = file.HeightPixels,
            FileName = file.FileName,
            Position = position,
        };
    }

    /// <inheritdoc />
    protected override Task<PhotoForm> ReadAsync(Draft draft, Photo record, CancellationToken cancellationToken) => Task.FromResult(new PhotoForm
    {
        Subject = record.Subject,
        BoardId = record.BoardId?.Value,
        Caption = record.Caption,
        AltText = record.AltText,
        Credit = record.Credit,
        Licence = record.Licence,
        IsDrawing = record.IsDrawing,
    });

    /// <inheritdoc />
    protected override Task<Refusal?> WriteAsync(Draft draft, Photo record, PhotoForm form, CancellationToken cancellationToken) => Task.FromResult(Write(record, form));

    private static Refusal? Write(Photo record, PhotoForm form)
    {
        var check = new FormCheck();
        var caption = check.May(form.Caption, "caption", Photo.MaxCaptionLength);
        var altText = check.May(form.AltText, "alt_text", 1000);
        var credit = check.May(form.Credit, "credit", 200);
        var licence = check.May(form.Licence, "licence", 200);
        if (check.Refusal is { } refusal)
            return refusal;
        record.Subject = form.Subject;
        record.BoardId = form.BoardId is { } board ? BoardId.From(board) : null;
        record.Caption = caption;
        record.AltText = altText;
        record.Credit = credit;
        record.Licence = licence;
        record.IsDrawing = form.IsDrawing;
        return null;
    }
}
