using System.Data;
using System.IO.Compression;
using System.Text.Json;
using Catalogue.Data.Photos;
using Catalogue.Domain.Families;
using Catalogue.Domain.Makers;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Archives;

/// <summary>
/// Writes whole teardowns, and the families and makers that they rest on, as one archive. All of it comes from one snapshot of the database; it is written while it
/// is read, so that its size costs no memory.
/// </summary>
/// <param name="contexts">Makes the context of each export.</param>
/// <param name="clock">Tells the time.</param>
public sealed class ExportArchive(IDbContextFactory<CatalogueContext> contexts, TimeProvider clock)
{
    private static readonly string MadeWith = $"catalogue {typeof(ExportArchive).Assembly.GetName().Version?.ToString(3)}";

    /// <summary>What is to be written.</summary>
    public sealed record Request
    {
        /// <summary>The addresses of the teardowns, or null for all.</summary>
        public IReadOnlyList<string>? Teardowns { get; init; }

        /// <summary>True to write drafts too.</summary>
        public bool WithDrafts { get; init; }

        /// <summary>True for the form that is given away.</summary>
        public bool ForOthers { get; init; }
    }

    /// <summary>How an export ended.</summary>
    public abstract record Outcome
    {
        private Outcome()
        {
        }

        /// <summary>It was written.</summary>
        /// <param name="Manifest">What it holds.</param>
        /// <param name="PhotosMissing">How many photos' files the lab had lost; their records are in it.</param>
        public sealed record Written(ArchiveManifest Manifest, int PhotosMissing) : Outcome;

        /// <summary>A teardown that was asked for is not there, or has nothing that may be written.</summary>
        /// <param name="Reason">Says which.</param>
        public sealed record NotFound(string Reason) : Outcome;

        /// <summary>It cannot be written now.</summary>
        /// <param name="Reason">Says why.</param>
        public sealed record NotYet(string Reason) : Outcome;
    }

    private sealed record Head(Teardown Teardown, ArchiveLine.ProductName Product, MakerId Brand, IReadOnlyList<Revision> Revisions);

    /// <summary>Writes one.</summary>
    /// <param name="request">What is to be written.</param>
    /// <param name="photos">Where picture files lie.</param>
    /// <param name="open">Opens where it is written to, once it is sure that it can be; it need not be able to seek, and is not disposed.</param>
    /// <param name="progress">Hears how many teardowns are written and how many there are; or null.</param>
    /// <param name="cancellationToken">Ends it; what was written is no archive then.</param>
    public async Task<Outcome> RunAsync(
        Request request, ArchivePhotos photos, Func<CancellationToken, Task<Stream>> open, Func<int, int, CancellationToken, Task>? progress, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(photos);
        ArgumentNullException.ThrowIfNull(open);
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        context.ChangeTracker.QueryTrackingBehavior = QueryTrackingBehavior.NoTracking;
        await using var transaction = await context.Database.BeginTransactionAsync(IsolationLevel.RepeatableRead, cancellationToken);

        var heads = await HeadsAsync(context, request, cancellationToken);
        if (request.Teardowns?.FirstOrDefault(slug => heads.TrueForAll(head => head.Teardown.Slug != slug)) is { } missing)
            return new Outcome.NotFound(request.WithDrafts ? $"There is no teardown “{missing}”." : $"There is no published teardown “{missing}”.");
        List<RevisionId> revisions = [.. heads.SelectMany(head => head.Revisions).Select(row => row.Id)];
        var shas = await context.Photos.Where(row => revisions.Contains(row.RevisionId)).Select(row => row.Sha256).Distinct().OrderBy(sha => sha).ToListAsync(cancellationToken);
        var copies = request.ForOthers ? await PublicCopiesAsync(context, shas, cancellationToken) : [];
        if (request.ForOthers && shas.Count > copies.Count)
            return new Outcome.NotYet($"{shas.Count - copies.Count} photos have no public copy yet; the queue makes them. Try again in a moment.");

        var now = clock.GetUtcNow();
        var settings = await context.LabSettings.SingleAsync(cancellationToken);
        var counts = new SortedDictionary<string, long>(StringComparer.Ordinal);
        var entries = new List<ArchiveManifest.Entry>();
        var output = new ArchiveOutput(await open(cancellationToken));
        var missingPhotos = 0;
        ArchiveManifest manifest;
        await using (var zip = await ZipArchive.CreateAsync(output, ZipArchiveMode.Create, leaveOpen: true, entryNameEncoding: null, cancellationToken))
        {
            foreach (var (name, text) in ArchiveDescription.Files)
            {
                await using var entry = await BeginAsync(name);
                await entry.CopyAsync(text(), cancellationToken);
            }

            var everything = request.Teardowns is null && !request.ForOthers;
            var families = await FamiliesAsync(context, everything ? null : revisions, cancellationToken);
            await using (var entry = await BeginAsync(ArchiveForm.MakersEntry))
                await WriteMakersAsync(context, everything ? null : await MakersAsync(context, heads, families, cancellationToken), (line, cancel) => WriteAsync(entry, ArchiveKind.Maker, line, default, cancel), cancellationToken);
            await using (var entry = await BeginAsync(ArchiveForm.FamiliesEntry))
            {
                var related = families.ToHashSet();
                foreach (var batch in families.Chunk(ArchiveFamilies.Batch))
                    foreach (var line in await ArchiveFamilies.ReadAsync(context, batch, related, request.ForOthers, cancellationToken))
                        await WriteAsync(entry, ArchiveKind.Family, line, default, cancellationToken);
            }

            var files = new List<(string StoreName, string Entry)>();
            await using (var entry = await BeginAsync(ArchiveForm.PhotosEntry))
            {
                foreach (var file in (await context.MediaFiles.Where(row => shas.Contains(row.Sha256)).ToListAsync(cancellationToken)).Select(row => File(row, copies.GetValueOrDefault(row.Sha256))).OrderBy(file => file.Line.Sha256, StringComparer.Ordinal).DistinctBy(file => file.Line.Sha256))
                {
                    var isThere = false;
                    await using (var content = await photos.OpenAsync(file.StoreName, cancellationToken))
                        isThere = content is not null;
                    await WriteAsync(entry, ArchiveKind.PhotoFile, isThere ? file.Line with { Entry = ArchiveForm.PhotoEntry(file.Line.Sha256, file.Line.Format) } : file.Line, default, cancellationToken);
                    if (isThere)
                        files.Add((file.StoreName, ArchiveForm.PhotoEntry(file.Line.Sha256, file.Line.Format)));
                    else
                        missingPhotos++;
                }
            }

            for (var i = 0; i < heads.Count; i++)
            {
                await using (var entry = await BeginAsync(ArchiveForm.TeardownEntry(heads[i].Teardown.Slug)))
                    await WriteTeardownAsync(context, heads[i], (kind, record, setting, cancel) => WriteAsync(entry, kind, record, setting, cancel), request.ForOthers, copies, cancellationToken);
                if (progress is not null)
                    await progress(i + 1, heads.Count, cancellationToken);
            }

            foreach (var (storeName, name) in files)
            {
                await using var content = await photos.OpenAsync(storeName, cancellationToken) ?? throw new FileNotFoundException("A photo's file went away while it was exported.", storeName);
                await using var entry = await ArchiveEntryWriter.BeginAsync(zip, name, CompressionLevel.NoCompression, now, entries, cancellationToken);
                await entry.CopyAsync(content, cancellationToken);
            }

            manifest = new ArchiveManifest
            {
                Form = ArchiveForm.Name,
                Version = ArchiveForm.Version,
                MadeAt = now,
                Lab = settings.LabName,
                LabAddress = settings.PublicBaseAddress,
                Licence = settings.ContentLicence,
                MadeWith = MadeWith,
                IsForOthers = request.ForOthers,
                HoldsDrafts = heads.Exists(head => head.Revisions.Any(IsDraft)),
                Counts = counts,
                Entries = [.. entries],
            };
            await using (var entry = await BeginAsync(ArchiveForm.ManifestEntry))
                await entry.CopyAsync(new MemoryStream(JsonSerializer.SerializeToUtf8Bytes(manifest, ManifestOptions)), cancellationToken);

            Task<ArchiveEntryWriter> BeginAsync(string name) => ArchiveEntryWriter.BeginAsync(zip, name, CompressionLevel.Optimal, now, entries, cancellationToken);
        }

        await output.FlushAsync(cancellationToken);
        return new Outcome.Written(manifest, missingPhotos);

        Task WriteAsync(ArchiveEntryWriter entry, ArchiveKind kind, object record, ArchiveJson.Setting setting, CancellationToken cancel)
        {
            counts[kind.Name] = counts.GetValueOrDefault(kind.Name) + 1;
            return entry.WriteLineAsync(kind, record, setting, cancel);
        }
    }

    private static JsonSerializerOptions ManifestOptions { get; } = new(ArchiveJson.Options) { WriteIndented = true };

    private static bool IsDraft(Revision row) => row.State is RevisionState.Draft or RevisionState.InReview;

    private static async Task<List<Head>> HeadsAsync(CatalogueContext context, Request request, CancellationToken cancellationToken)
    {
        var chosen = context.Teardowns.AsQueryable();
        if (request.Teardowns is { } slugs)
            chosen = chosen.Where(row => slugs.Contains(row.Slug));
        var rows = await chosen
            .Join(context.Products, row => row.ProductId, product => product.Id, (row, product) => new { Teardown = row, Product = product })
            .Join(context.Makers, row => row.Product.BrandId, maker => maker.Id, (row, maker) => new { row.Teardown, row.Product, Brand = maker })
            .OrderBy(row => row.Teardown.Number)
            .ToListAsync(cancellationToken);
        var ids = rows.ConvertAll(row => row.Teardown.Id);
        var revisions = (await context.Revisions.Where(row => ids.Contains(row.TeardownId)).OrderBy(row => row.Number).ToListAsync(cancellationToken))
            .Where(row => (request.WithDrafts || !IsDraft(row)) && (!request.ForOthers || row.State is not RevisionState.Withdrawn))
            .ToLookup(row => row.TeardownId);
        return
        [
            .. rows.Where(row => revisions.Contains(row.Teardown.Id))
                .Select(row => new Head(row.Teardown, new ArchiveLine.ProductName(row.Brand.Name, row.Product.Name, row.Product.Model, row.Product.Category), row.Brand.Id, [.. revisions[row.Teardown.Id]])),
        ];
    }

    private static async Task<Dictionary<string, Rendition>> PublicCopiesAsync(CatalogueContext context, List<string> shas, CancellationToken cancellationToken) =>
        (await context.Renditions.Where(row => shas.Contains(row.Sha256)).ToListAsync(cancellationToken))
            .GroupBy(row => row.Sha256, StringComparer.Ordinal)
            .ToDictionary(group => group.Key, group => group.MaxBy(row => row.WidthPixels)!, StringComparer.Ordinal);

    private static (ArchiveLine.PhotoFile Line, string StoreName) File(MediaFile row, Rendition? copy) => copy is null
        ? (new ArchiveLine.PhotoFile { Sha256 = row.Sha256, Format = row.Kind, Bytes = row.Bytes, WidthPixels = row.WidthPixels, HeightPixels = row.HeightPixels, ReceivedAt = row.ReceivedAt },
            ArchiveForm.StoreName(row.Sha256, row.Kind))
        : (new ArchiveLine.PhotoFile { Sha256 = copy.ContentSha256, Format = "jpeg", Bytes = copy.Bytes, WidthPixels = copy.WidthPixels, HeightPixels = copy.HeightPixels, ReceivedAt = row.ReceivedAt },
            copy.StoreName);

    // In the order of their match keys; with the families that they were merged into.
    private static async Task<List<FamilyId>> FamiliesAsync(CatalogueContext context, List<RevisionId>? revisions, CancellationToken cancellationToken)
    {
        var rows = context.Families.AsQueryable();
        if (revisions is not null)
        {
            var linked = context.Components.Where(row => revisions.Contains(row.RevisionId) && row.FamilyId != null).Select(row => row.FamilyId!.Value);
            var moved = context.FamilyMoves.Where(row => revisions.Contains(row.RevisionId)).Select(row => row.FamilyId);
            var named = linked.Union(moved);
            var targets = context.Families.Where(row => named.Contains(row.Id) && row.MergedIntoId != null).Select(row => row.MergedIntoId!.Value);
            rows = rows.Where(row => named.Contains(row.Id) || targets.Contains(row.Id));
        }

        var keys = await rows.Select(row => new { row.Id, row.MatchKey }).ToListAsync(cancellationToken);
        return [.. keys.OrderBy(row => row.MatchKey, StringComparer.Ordinal).Select(row => row.Id)];
    }

    private static async Task<List<MakerId>> MakersAsync(CatalogueContext context, List<Head> heads, List<FamilyId> families, CancellationToken cancellationToken)
    {
        var known = await context.FamilyMakers.Where(row => families.Contains(row.FamilyId)).Select(row => row.MakerId).Distinct().ToListAsync(cancellationToken);
        var marked = await context.TopMarks.Where(row => families.Contains(row.FamilyId) && row.MakerId != null).Select(row => row.MakerId!.Value).Distinct().ToListAsync(cancellationToken);
        return [.. heads.Select(head => head.Brand).Concat(known).Concat(marked).Distinct()];
    }

    private static async Task WriteMakersAsync(CatalogueContext context, List<MakerId>? only, Func<ArchiveLine.Maker, CancellationToken, Task> write, CancellationToken cancellationToken)
    {
        var makers = await context.Makers.Where(row => only == null || only.Contains(row.Id)).ToListAsync(cancellationToken);
        var aliases = (await context.MakerAliases.Where(row => only == null || only.Contains(row.MakerId)).ToListAsync(cancellationToken)).ToLookup(row => row.MakerId, row => row.Name);
        foreach (var row in makers.OrderBy(row => row.NameKey, StringComparer.Ordinal))
            await write(new ArchiveLine.Maker { Name = row.Name, Slug = row.Slug, Aliases = [.. aliases[row.Id].Order(StringComparer.Ordinal)] }, cancellationToken);
    }

    private static async Task WriteTeardownAsync(
        CatalogueContext context, Head head, Func<ArchiveKind, object, ArchiveJson.Setting, CancellationToken, Task> write, bool forOthers, Dictionary<string, Rendition> copies, CancellationToken cancellationToken)
    {
        await write(
            ArchiveKind.Teardown,
            new ArchiveLine.Teardown { Id = head.Teardown.Id, Slug = head.Teardown.Slug, Number = head.Teardown.Number, SerialNumber = head.Teardown.SerialNumber, CreatedAt = head.Teardown.CreatedAt, Product = head.Product },
            new ArchiveJson.Setting { ForOthers = forOthers },
            cancellationToken);
        foreach (var revision in head.Revisions)
        {
            var setting = new ArchiveJson.Setting(revision.Number, ForOthers: forOthers);
            await write(ArchiveKind.Revision, revision, setting, cancellationToken);
            var moves = await context.FamilyMoves.Where(row => row.RevisionId == revision.Id).OrderBy(row => row.ComponentId).ToListAsync(cancellationToken);
            var linked = moves.Select(row => row.FamilyId)
                .Concat(await context.Components.Where(row => row.RevisionId == revision.Id && row.FamilyId != null).Select(row => row.FamilyId!.Value).Distinct().ToListAsync(cancellationToken))
                .Distinct().ToList();
            var keys = await context.Families.Where(row => linked.Contains(row.Id)).ToDictionaryAsync(row => row.Id, row => row.MatchKey, cancellationToken);
            foreach (var kind in ArchiveKind.Content)
            {
                // A draft's figures follow from its facts and are computed where it arrives.
                if (IsDraft(revision) && kind.Type == typeof(Domain.Figures.Figure))
                    continue;
                await foreach (var row in kind.Rows(context, revision.Id).WithCancellation(cancellationToken))
                {
                    await write(
                        kind,
                        row,
                        setting with
                        {
                            Family = row is Domain.Components.BoardComponent { FamilyId: { } family } ? keys[family] : null,
                            PublicCopy = row is Domain.Photos.Photo photo ? copies.GetValueOrDefault(photo.Sha256) : null,
                        },
                        cancellationToken);
                }
            }

            foreach (var move in moves)
                await write(ArchiveKind.FamilyMove, new ArchiveLine.FamilyMove { ComponentId = move.ComponentId }, setting with { Family = keys[move.FamilyId] }, cancellationToken);
            if (await context.Publications.SingleOrDefaultAsync(row => row.RevisionId == revision.Id, cancellationToken) is { } publication)
            {
                await write(
                    ArchiveKind.Publication,
                    new ArchiveLine.Publication { Id = publication.Id, Note = publication.Note, PublishedAt = publication.PublishedAt, PublishedBy = publication.PublishedBy },
                    setting,
                    cancellationToken);
            }
        }
    }
}
