using Catalogue.Data.Accounts;
using Catalogue.Data.Figures;
using Catalogue.Data.Photos;
using Catalogue.Data.Queue;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Publishing;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Archives;

/// <summary>
/// Brings one teardown in, within the caller's transaction. A revision is written as a draft and then published with the number and the time that it had, which is
/// what the guards of published revisions allow; nothing is ever written into a revision that is published.
/// </summary>
/// <param name="context">In a transaction.</param>
/// <param name="file">The archive, whose lines were checked.</param>
/// <param name="reading">What was noted of it.</param>
/// <param name="keys">The families that match keys stand for here.</param>
/// <param name="keeps">True to bring all revisions in as they stood; else the newest as a draft for review.</param>
/// <param name="clock">Tells the time.</param>
internal sealed class TeardownArrival(CatalogueContext context, ArchiveFile file, ArchiveReading reading, FamilyKeys keys, bool keeps, TimeProvider clock)
{
    private const int Batch = 500;

    private int _waiting;
    private (RevisionState State, DateTimeOffset? PublishedAt) _stood;

    /// <summary>Brings it in.</summary>
    /// <param name="teardown">The teardown.</param>
    /// <param name="address">The address that was foreseen; where somebody took it since, it gets another one.</param>
    /// <param name="who">Who brings it in.</param>
    /// <param name="cancellationToken">Cancels it.</param>
    public async Task RunAsync(ArchivedTeardown teardown, string address, Editor who, CancellationToken cancellationToken)
    {
        await CreateTeardown.LockAsync(context, cancellationToken);
        // Another run of the same archive may have been faster.
        if (await context.Teardowns.AnyAsync(row => row.Id == teardown.Head.Id, cancellationToken))
            return;
        if (await context.Teardowns.AnyAsync(row => row.Slug == address, cancellationToken))
            address = await CreateTeardown.FreeSlugAsync(context, address, cancellationToken);
        List<ArchivedTeardown.ArchivedRevision> coming = keeps ? teardown.Revisions : [teardown.Newest!];
        await AddFilesAsync(coming.SelectMany(revision => revision.Photos).Distinct(StringComparer.Ordinal), cancellationToken);
        await AddTeardownAsync(teardown.Head, address, cancellationToken);
        context.AuditEntries.Add(new AuditEntry { At = clock.GetUtcNow(), Who = who.Name, Action = "import teardown", TeardownId = teardown.Head.Id });
        await SaveAsync(cancellationToken);

        Revision? open = null;
        ArchiveLine.Publication? publication = null;
        await foreach (var line in file.LinesAsync(teardown.Entry, cancellationToken))
        {
            if (line.Record is Revision next)
            {
                await CloseAsync(open, publication, teardown.Head.Id, who, cancellationToken);
                (open, publication) = (coming.Exists(revision => revision.Id == next.Id) ? next : null, null);
                if (open is not null)
                    await OpenAsync(open, teardown.Head.Id, cancellationToken);
            }
            else if (open is not null)
            {
                if (line.Record is ArchiveLine.Publication act)
                    publication = act;
                else
                    await AddAsync(open.Id, line, cancellationToken);
            }
        }

        await CloseAsync(open, publication, teardown.Head.Id, who, cancellationToken);
        await context.Database.ExecuteSqlAsync($"set constraints all immediate", cancellationToken);
    }

    private async Task AddFilesAsync(IEnumerable<string> photos, CancellationToken cancellationToken)
    {
        var now = clock.GetUtcNow();
        foreach (var file in photos.Select(sha => reading.Photos[sha]))
        {
            await context.Database.ExecuteSqlAsync(
                $"""
                insert into media_files (sha256, kind, bytes, width_pixels, height_pixels, received_at)
                values ({file.Sha256}, {file.Format}, {file.Bytes}, {file.WidthPixels}, {file.HeightPixels}, {file.ReceivedAt})
                on conflict (sha256) do nothing
                """,
                cancellationToken);
            if (file.Entry is not null && !await context.Renditions.AnyAsync(row => row.Sha256 == file.Sha256, cancellationToken))
                await JobQueue.EnqueueAsync(context, PhotoChanges.MakeRenditions, file.Sha256, now, cancellationToken);
        }
    }

    private async Task AddTeardownAsync(ArchiveLine.Teardown head, string address, CancellationToken cancellationToken)
    {
        var product = await CreateTeardown.FindOrAddProductAsync(context, head.Product.Brand, head.Product.Name, head.Product.Model, head.Product.Category, cancellationToken);
        await SaveAsync(cancellationToken);
        // Its running number is the lab's own: kept where this catalogue stands in for the one that gave it.
        if (keeps && !file.Manifest.IsForOthers && !await context.Teardowns.AnyAsync(row => row.Number == head.Number, cancellationToken))
        {
            await context.Database.ExecuteSqlAsync(
                $"""
                insert into teardowns (id, product_id, slug, number, serial_number, created_at) overriding system value
                values ({head.Id.Value}, {product.Id.Value}, {address}, {head.Number}, {head.SerialNumber}, {head.CreatedAt})
                """,
                cancellationToken);
            await context.Database.ExecuteSqlAsync(
                $"""
                select setval(pg_get_serial_sequence('teardowns', 'number'), {head.Number})
                where {head.Number} > coalesce(pg_sequence_last_value(pg_get_serial_sequence('teardowns', 'number')::regclass), 0)
                """,
                cancellationToken);
        }
        else
        {
            await context.Database.ExecuteSqlAsync(
                $"insert into teardowns (id, product_id, slug, serial_number, created_at) values ({head.Id.Value}, {product.Id.Value}, {address}, {head.SerialNumber}, {head.CreatedAt})",
                cancellationToken);
        }
    }

    private async Task OpenAsync(Revision revision, TeardownId teardown, CancellationToken cancellationToken)
    {
        _stood = (revision.State, revision.PublishedAt);
        var row = context.Entry(revision);
        row.Property(draft => draft.TeardownId).CurrentValue = teardown;
        if (!keeps)
            row.Property(draft => draft.Number).CurrentValue = 1;
        row.State = EntityState.Added;
        row.Property(draft => draft.State).CurrentValue = RevisionState.Draft;
        row.Property(draft => draft.PublishedAt).CurrentValue = null;
        await SaveAsync(cancellationToken);
    }

    private async Task AddAsync(RevisionId revision, ArchiveFile.Line line, CancellationToken cancellationToken)
    {
        FamilyId? family = line.Family is { } key ? keys.Find(key, followMerges: !keeps) : null;
        switch (line.Record)
        {
            case ArchiveLine.FamilyMove move when keeps:
                context.FamilyMoves.Add(new FamilyMove { RevisionId = revision, ComponentId = move.ComponentId, FamilyId = family!.Value });
                break;
            case ArchiveLine.FamilyMove move:
                // A draft takes up where the catalogue that it came from stood.
                await SaveAsync(cancellationToken);
                await context.Components.Where(row => row.RevisionId == revision && row.Id == move.ComponentId).ExecuteUpdateAsync(set => set.SetProperty(row => row.FamilyId, family), cancellationToken);
                break;
            case Figure when !keeps:
                return;
            case IRevisionContent record:
                record.RevisionId = revision;
                if (record is BoardComponent part)
                    part.FamilyId = family;
                context.Add(record);
                break;
            default:
                throw new InvalidOperationException("Every kind of line has its place.");
        }

        if (++_waiting >= Batch)
            await SaveAsync(cancellationToken);
    }

    private async Task CloseAsync(Revision? revision, ArchiveLine.Publication? publication, TeardownId teardown, Editor who, CancellationToken cancellationToken)
    {
        if (revision is null)
            return;
        await SaveAsync(cancellationToken);
        var (state, publishedAt) = keeps ? _stood : (RevisionState.InReview, null);
        if (state is RevisionState.Draft or RevisionState.InReview)
        {
            await ComputeAsync(() => RecomputeFigures.RunAsync(context, revision.Id, cancellationToken));
        }
        else if (publication is not null)
        {
            context.Publications.Add(new Publication
            {
                Id = publication.Id,
                TeardownId = teardown,
                RevisionId = revision.Id,
                Note = publication.Note,
                PublishedAt = publication.PublishedAt,
                PublishedBy = publication.PublishedBy ?? file.Manifest.Lab,
            });
        }

        if (state is RevisionState.Published)
        {
            await ComputeAsync(async () =>
            {
                var facts = await RecomputeFigures.FactsAsync(context, revision.Id, cancellationToken);
                context.CurrentFigures.AddRange(RevisionFigures.Compute(revision.Id, facts, await RecomputeFigures.LinesAsync(context, cancellationToken)).Select(figure => CurrentFigure.From(teardown, figure)));
                return 0;
            });
        }

        await SaveAsync(cancellationToken);
        var submitter = keeps ? revision.SubmittedBy : who.Name;
        await context.Revisions.Where(row => row.Id == revision.Id).ExecuteUpdateAsync(
            set => set.SetProperty(row => row.State, state).SetProperty(row => row.PublishedAt, publishedAt).SetProperty(row => row.SubmittedBy, submitter), cancellationToken);

        // Values that no form of this program would take may lead where no rule can follow.
        async Task ComputeAsync(Func<Task<int>> compute)
        {
            try
            {
                await compute();
            }
            catch (Exception exception) when (exception is ArgumentException or ArithmeticException)
            {
                throw new ArchiveRefusedException(ArchiveForm.TeardownEntry(reading.Teardowns.First(row => row.Head.Id == teardown).Head.Slug), $"No figures can be computed from its values: {exception.Message}");
            }
        }
    }

    private async Task SaveAsync(CancellationToken cancellationToken)
    {
        await context.SaveChangesAsync(cancellationToken);
        context.ChangeTracker.Clear();
        _waiting = 0;
    }
}
