using System.Globalization;
using Catalogue.Data.Families;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace Catalogue.Data.Archives;

/// <summary>
/// Brings an archive in. All of it is read and checked before anything is taken; then its pictures go into the store, its makers and families in one transaction, and
/// each teardown in one of its own. Whatever is here already is recognised by its id and left as it is, so that an import may be broken off and begun again.
/// </summary>
/// <param name="contexts">Makes the context of each step.</param>
/// <param name="clock">Tells the time.</param>
public sealed class ImportArchive(IDbContextFactory<CatalogueContext> contexts, TimeProvider clock)
{
    /// <summary>How it is to be brought in.</summary>
    /// <param name="Who">Who brings it in.</param>
    /// <param name="DryRun">True to tell what would happen and change nothing.</param>
    /// <param name="KeepPublished">True to bring published revisions in as published, whoever made them; for an administrator alone to ask.</param>
    /// <param name="MayPublish">True when the full form may arrive as it was in a catalogue that holds nothing else.</param>
    public sealed record Request(Editor Who, bool DryRun, bool KeepPublished, bool MayPublish);

    /// <summary>How an import ended.</summary>
    public abstract record Outcome
    {
        private Outcome()
        {
        }

        /// <summary>It was brought in, or foreseen.</summary>
        /// <param name="Report">What was done.</param>
        public sealed record Done(ArchiveReport Report) : Outcome;

        /// <summary>It cannot be brought in.</summary>
        /// <param name="Reason">Names the entry and the line, and says what is wrong.</param>
        public sealed record Refused(string Reason) : Outcome;
    }

    private sealed record Plan(ArchivedTeardown Teardown, ArchiveReport.ArchivedItem Item);

    /// <summary>Brings one in.</summary>
    /// <param name="file">The archive; it can be read from any place, and is not disposed.</param>
    /// <param name="request">How.</param>
    /// <param name="photos">Where pictures are taken in.</param>
    /// <param name="progress">Hears how many parts are done and how many there are.</param>
    /// <param name="cancellationToken">Ends it; teardowns that were brought in stay.</param>
    public async Task<Outcome> RunAsync(Stream file, Request request, ArchivePhotos photos, Func<int, int, CancellationToken, Task> progress, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(file);
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(photos);
        ArgumentNullException.ThrowIfNull(progress);
        try
        {
            using var archive = await ArchiveFile.OpenAsync(file, cancellationToken);
            await archive.VerifyAsync(cancellationToken);
            return new Outcome.Done(await RunAsync(archive, request, photos, progress, cancellationToken));
        }
        catch (ArchiveRefusedException refused)
        {
            return new Outcome.Refused(refused.Message);
        }
    }

    private async Task<ArchiveReport> RunAsync(ArchiveFile archive, Request request, ArchivePhotos photos, Func<int, int, CancellationToken, Task> progress, CancellationToken cancellationToken)
    {
        ArchiveReading reading;
        FamilyKeys keys;
        List<Plan> plans;
        bool keeps;
        await using (var context = await contexts.CreateDbContextAsync(cancellationToken))
        {
            context.ChangeTracker.QueryTrackingBehavior = QueryTrackingBehavior.NoTracking;
            reading = new ArchiveReading(archive, context.Model);
            await reading.ReadCatalogueAsync(cancellationToken);
            keys = await FamilyKeys.ReadAsync(context, reading.Families, cancellationToken);
            // Reading and bringing in are each one half of the work.
            await reading.ReadTeardownsAsync(keys.LeadsTo, (done, total, cancel) => progress(done, 2 * total, cancel), cancellationToken);
            keeps = request.KeepPublished || (request.MayPublish && !archive.Manifest.IsForOthers && await HoldsNothingElseAsync(context, reading, cancellationToken));
            plans = await PlanAsync(context, reading, keeps, archive.Manifest.IsForOthers, cancellationToken);
        }

        var coming = plans.Where(plan => plan.Item.Action is ArchiveReport.Action.New).ToList();
        var pictures = await TakePhotosAsync(archive, reading, coming, keeps, photos, request.DryRun, cancellationToken);
        var (makers, families) = await TakeFamiliesAsync(archive, request.DryRun, cancellationToken);
        if (!request.DryRun)
        {
            await using (var context = await contexts.CreateDbContextAsync(cancellationToken))
                keys = await FamilyKeys.ReadAsync(context, reading.Families, cancellationToken);
            for (var i = 0; i < coming.Count; i++)
            {
                await TakeTeardownAsync(archive, reading, coming[i], keys, keeps, request.Who, cancellationToken);
                await progress(plans.Count + i + 1, plans.Count + coming.Count, cancellationToken);
            }
        }

        return new ArchiveReport
        {
            DryRun = request.DryRun,
            Lab = archive.Manifest.Lab,
            MadeAt = archive.Manifest.MadeAt,
            IsForOthers = archive.Manifest.IsForOthers,
            KeepsPublished = keeps,
            Teardowns = plans.ConvertAll(plan => plan.Item),
            Makers = makers,
            Families = families,
            Photos = pictures,
        };
    }

    private static async Task<bool> HoldsNothingElseAsync(CatalogueContext context, ArchiveReading reading, CancellationToken cancellationToken)
    {
        var ids = reading.Teardowns.Select(teardown => teardown.Head.Id).ToList();
        return !await context.Teardowns.AnyAsync(row => !ids.Contains(row.Id), cancellationToken);
    }

    private static async Task<List<Plan>> PlanAsync(CatalogueContext context, ArchiveReading reading, bool keeps, bool forOthers, CancellationToken cancellationToken)
    {
        var plans = new List<Plan>(reading.Teardowns.Count);
        var promised = new HashSet<string>(StringComparer.Ordinal);
        foreach (var teardown in reading.Teardowns)
        {
            var id = teardown.Head.Id;
            if (await context.Teardowns.SingleOrDefaultAsync(row => row.Id == id, cancellationToken) is { } here)
            {
                plans.Add(new Plan(teardown, await CompareAsync(context, teardown, here, forOthers, cancellationToken)));
                continue;
            }

            List<RevisionId> revisions = [.. teardown.Revisions.Select(row => row.Id)];
            if (await context.Revisions.AnyAsync(row => revisions.Contains(row.Id), cancellationToken))
                throw new ArchiveRefusedException(teardown.Entry, "One of its revisions belongs to another teardown here; the ids in the archive were changed.");
            plans.Add(new Plan(teardown, await ForeseeAsync(context, teardown, keeps, promised, cancellationToken)));
        }

        return plans;
    }

    private static async Task<ArchiveReport.ArchivedItem> ForeseeAsync(CatalogueContext context, ArchivedTeardown teardown, bool keeps, HashSet<string> promised, CancellationToken cancellationToken)
    {
        var slug = teardown.Head.Slug;
        var history = keeps ? [] : teardown.Revisions.Where(row => row.Publication is not null).Select(History).ToList();
        if (!keeps && teardown.Newest is null)
            return new ArchiveReport.ArchivedItem(slug, ArchiveReport.Action.LeftOut, null, 0, 0, ["All its revisions were withdrawn."], history);
        var attempt = 1;
        string address;
        do
            address = Slug.Numbered(slug, attempt++);
        while (promised.Contains(address) || await context.Teardowns.AnyAsync(row => row.Slug == address, cancellationToken));
        promised.Add(address);
        var notes = new List<string>();
        if (address != slug)
            notes.Add($"The address “{slug}” belongs to another teardown here; it gets “{address}”.");
        if (!keeps)
            notes.Add(string.Create(CultureInfo.InvariantCulture, $"Revision {teardown.Newest!.Number} arrives as a draft for review."));
        return new ArchiveReport.ArchivedItem(slug, ArchiveReport.Action.New, address, keeps ? teardown.Revisions.Count : 1, (keeps ? teardown.Revisions[^1] : teardown.Newest!).Components, notes, history);
    }

    private static string History(ArchivedTeardown.ArchivedRevision revision) => string.Create(
        CultureInfo.InvariantCulture,
        $"Revision {revision.Number} ({Domain.Text.SnakeCase.Code(revision.State)}), published {revision.Publication!.PublishedAt:yyyy-MM-dd HH:mm} UTC{(revision.Publication.PublishedBy is { } who ? " by " + who : "")}{(revision.Publication.Note.Length > 0 ? ": " + revision.Publication.Note : ".")}");

    private static async Task<ArchiveReport.ArchivedItem> CompareAsync(CatalogueContext context, ArchivedTeardown teardown, Teardown here, bool forOthers, CancellationToken cancellationToken)
    {
        var notes = new List<string>();
        var newest = teardown.Newest ?? teardown.Revisions[^1];
        var known = await context.Revisions.Where(row => row.TeardownId == here.Id).ToDictionaryAsync(row => row.Id, cancellationToken);
        if (!known.ContainsKey(newest.Id))
            notes.Add(string.Create(CultureInfo.InvariantCulture, $"Revision {newest.Number} of the archive is not here."));
        foreach (var revision in teardown.Revisions.Where(row => known.ContainsKey(row.Id)))
        {
            var differing = revision.Digests.Differing(await DigestsAsync(context, known[revision.Id], forOthers, cancellationToken));
            if (differing.Count > 0)
                notes.Add(string.Create(CultureInfo.InvariantCulture, $"Revision {revision.Number} differs in: {string.Join(", ", differing)}."));
        }

        return new ArchiveReport.ArchivedItem(teardown.Head.Slug, notes.Count == 0 ? ArchiveReport.Action.Same : ArchiveReport.Action.Differing, here.Slug, 0, newest.Components, notes, []);
    }

    private static async Task<RevisionDigests> DigestsAsync(CatalogueContext context, Revision revision, bool forOthers, CancellationToken cancellationToken)
    {
        var digests = new RevisionDigests(forOthers);
        digests.Add(ArchiveKind.Revision, revision);
        foreach (var kind in ArchiveKind.Content)
            await foreach (var row in kind.Rows(context, revision.Id).WithCancellation(cancellationToken))
                digests.Add(kind, row);
        digests.Add(await context.FamilyLinks
            .Where(row => row.RevisionId == revision.Id)
            .Join(context.Families, row => row.FamilyId, family => family.Id, (row, family) => new { row.ComponentId, family.MatchKey })
            .ToDictionaryAsync(row => row.ComponentId, row => row.MatchKey, cancellationToken));
        return digests;
    }

    private static async Task<ArchiveReport.Pictures> TakePhotosAsync(
        ArchiveFile archive, ArchiveReading reading, List<Plan> coming, bool keeps, ArchivePhotos photos, bool dryRun, CancellationToken cancellationToken)
    {
        int taken = 0, known = 0, missing = 0;
        foreach (var sha in coming.SelectMany(plan => keeps ? plan.Teardown.Revisions : [plan.Teardown.Newest!]).SelectMany(revision => revision.Photos).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal))
        {
            var file = reading.Photos[sha];
            await using (var stored = await photos.OpenAsync(ArchiveForm.StoreName(sha, file.Format), cancellationToken))
            {
                if (stored is not null)
                {
                    known++;
                    continue;
                }
            }

            if (file.Entry is not { } entry)
            {
                missing++;
                continue;
            }

            taken++;
            if (dryRun)
                continue;
            await using var content = await archive.OpenEntryAsync(entry, cancellationToken);
            var picture = await photos.TakeInAsync(content, cancellationToken);
            if (picture.Refusal is { } reason)
                throw new ArchiveRefusedException(entry, reason);
            if ((picture.Sha256, picture.Kind, picture.WidthPixels, picture.HeightPixels) != (file.Sha256, file.Format, file.WidthPixels, file.HeightPixels))
                throw new ArchiveRefusedException(entry, $"The picture is {picture.Kind}, {picture.WidthPixels} × {picture.HeightPixels}; {ArchiveForm.PhotosEntry} says {file.Format}, {file.WidthPixels} × {file.HeightPixels}.");
        }

        return new ArchiveReport.Pictures(taken, known, missing);
    }

    private async Task<(ArchiveReport.Matched Makers, ArchiveReport.Matched Families)> TakeFamiliesAsync(ArchiveFile archive, bool dryRun, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        context.ChangeTracker.AutoDetectChangesEnabled = true;
        await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
        await CreateTeardown.LockAsync(context, cancellationToken);
        await LinkFamilies.LockAsync(context, cancellationToken);
        var arrival = new FamilyArrival(context, archive);
        try
        {
            await arrival.RunAsync(cancellationToken);
        }
        catch (DbUpdateException exception) when (exception.InnerException is PostgresException postgres && IsOfTheData(postgres))
        {
            throw new ArchiveRefusedException(ArchiveForm.FamiliesEntry, $"The database does not take it: {postgres.MessageText}.");
        }

        if (!dryRun)
            await transaction.CommitAsync(cancellationToken);
        return (arrival.Makers, arrival.Families);
    }

    private async Task TakeTeardownAsync(ArchiveFile archive, ArchiveReading reading, Plan plan, FamilyKeys keys, bool keeps, Editor who, CancellationToken cancellationToken)
    {
        try
        {
            await using var context = await contexts.CreateDbContextAsync(cancellationToken);
            await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
            await new TeardownArrival(context, archive, reading, keys, keeps, clock).RunAsync(plan.Teardown, plan.Item.Address!, who, cancellationToken);
            await transaction.CommitAsync(cancellationToken);
        }
        catch (DbUpdateException exception) when (exception.InnerException is PostgresException postgres && IsOfTheData(postgres))
        {
            throw new ArchiveRefusedException(plan.Teardown.Entry, $"The database does not take it: {postgres.MessageText}. Teardowns before it were brought in.");
        }
        catch (PostgresException postgres) when (IsOfTheData(postgres))
        {
            throw new ArchiveRefusedException(plan.Teardown.Entry, $"The database does not take it: {postgres.MessageText}. Teardowns before it were brought in.");
        }
    }

    // Classes 22 and 23 of SQLSTATE: what was to be stored is wrong. Everything else is the machine's.
    private static bool IsOfTheData(PostgresException exception) => exception.SqlState.StartsWith("22", StringComparison.Ordinal) || exception.SqlState.StartsWith("23", StringComparison.Ordinal);
}
