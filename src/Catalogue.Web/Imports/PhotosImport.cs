using System.Globalization;
using Catalogue.Data.Photos;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Imports;
using Catalogue.Domain.Photos;
using Catalogue.Domain.Teardowns;
using Catalogue.Media.Photos;

namespace Catalogue.Web.Imports;

/// <summary>
/// Many pictures at once, in a zip file or a folder: places are proposed by name and may be given, then each picture passes the intake and is put in its
/// place, one after the other. Begun again after a break it finds what it added and goes on.
/// </summary>
/// <param name="records">Reads the teardown.</param>
/// <param name="intake">Takes pictures in.</param>
/// <param name="photos">Puts them in their place.</param>
internal sealed class PhotosImport(TeardownRecordQuery records, PhotoIntake intake, PlacePhoto photos) : IImportWorker
{
    private const string Teardown = "teardown";
    private const string DryRun = "dry_run";
    private const int StartBytes = 4096;

    public ImportKind Kind => ImportKind.Photos;

    public long MaxFileBytes => 2L * 1024 * 1024 * 1024;

    public IReadOnlyDictionary<string, string> Options { get; } = new Dictionary<string, string>
    {
        [Teardown] = "the address (slug) of the teardown that the pictures belong to; needed",
        [DryRun] = "true to say what would become of each file and change nothing",
    };

    public IReadOnlyDictionary<string, string> Fields { get; } = new Dictionary<string, string> { [PhotoCorrections.Option] = PhotoCorrections.Form };

    /// <summary>What is asked for.</summary>
    /// <param name="Slug">The teardown.</param>
    /// <param name="IsDryRun">True to change nothing.</param>
    /// <param name="Corrections">Places that a person gave.</param>
    /// <param name="Who">Who adds the pictures.</param>
    /// <param name="AskedAt">Since when this batch has been under way: what it added before a break is counted as added.</param>
    public sealed record Request(string Slug, bool IsDryRun, PhotoCorrections Corrections, Editor Who, DateTimeOffset AskedAt);

    public async Task<Refusal?> CheckAsync(IReadOnlyDictionary<string, string> options, string? role, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(options);
        if (!options.TryGetValue(Teardown, out var slug) || slug.Length == 0)
            return new Refusal(Teardown, "teardown is missing: give the address (slug) of the teardown that the pictures belong to.");
        if (ImportSwitch.Check(options, DryRun) is { } refusal)
            return refusal;
        if (PhotoCorrections.TryParse(options.GetValueOrDefault(PhotoCorrections.Option), out refusal) is null)
            return refusal;
        return await records.LatestAsync(slug, cancellationToken) is null ? new Refusal(Teardown, $"There is no teardown “{slug}”.") : null;
    }

    public async Task<ImportOutcome> RunAsync(ImportWork work, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(work);
        switch (ZipBundle.Open(work.File))
        {
            case FileBundle.Opening.Refused refused:
                return new ImportOutcome.Refused(refused.Reason);
            case FileBundle.Opening.Opened opened:
                using (opened.Bundle)
                {
                    var options = work.Run.Options;
                    var corrections = PhotoCorrections.TryParse(options.GetValueOrDefault(PhotoCorrections.Option), out var refusal);
                    return corrections is null
                        ? new ImportOutcome.Refused(refusal!.Reason)
                        : await RunAsync(
                            opened.Bundle, new Request(options[Teardown], ImportSwitch.IsOn(options, DryRun), corrections, work.Run.Editor, work.Run.AskedAt), work.ReportAsync, cancellationToken);
                }

            default:
                throw new InvalidOperationException("A file is opened or refused.");
        }
    }

    /// <summary>Runs over files that came together.</summary>
    public async Task<ImportOutcome> RunAsync(FileBundle bundle, Request request, Func<int, int, CancellationToken, Task> report, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(bundle);
        ArgumentNullException.ThrowIfNull(request);
        if (await records.LatestAsync(request.Slug, cancellationToken) is not { } record)
            return new ImportOutcome.Refused($"There is no teardown “{request.Slug}”.");
        KnownBoard[] boards = [.. record.Boards.Select(board => new KnownBoard(board.Id, board.Position, board.Name))];
        if (Unknown(request.Corrections, bundle, boards) is { } unknown)
            return new ImportOutcome.Refused(unknown);

        var (wanted, others) = Sort(bundle, request.Corrections);
        var entries = new List<PhotosReport.Entry>();
        var batch = new Batch(record, request, boards);
        foreach (var proposal in PhotoNames.Propose([.. wanted.Keys], boards))
        {
            await report(entries.Count, wanted.Count, cancellationToken);
            var given = request.Corrections.PlaceOf(proposal.Path);
            var place = given ?? proposal.Place;
            var entry = new PhotosReport.Entry(
                proposal.Path,
                PhotoOutcome.WouldAdd,
                PhotosReport.Place.From(place, boards),
                given is null ? proposal.IsSure : null,
                given is null ? proposal.Reasons : ["The place was given."],
                given is null ? proposal.Doubts : [],
                wanted[proposal.Path].Remark);
            entries.Add(request.IsDryRun
                ? await ForeseeAsync(bundle, wanted[proposal.Path].Entry, entry, batch, cancellationToken)
                : await AddAsync(bundle, wanted[proposal.Path].Entry, entry, place, batch, cancellationToken));
        }

        await report(wanted.Count, wanted.Count, cancellationToken);
        if (entries.Count == 0 && others.Count == 0)
            return new ImportOutcome.Refused("There is no file in it.");
        string[] warnings = bundle.GuessedEncoding is { } guessed ? [$"Names do not say their encoding; {guessed} is a guess. Look at them before anything is added."] : [];
        return new ImportOutcome.Done(PhotosReport.Of(request.Slug, request.IsDryRun, warnings, [.. entries, .. others]));
    }

    // Files that may be pictures by their path, with what is odd about them, and all others with the reason.
    private static (Dictionary<string, (FileBundle.Entry Entry, string? Remark)> Wanted, List<PhotosReport.Entry> Others) Sort(FileBundle bundle, PhotoCorrections corrections)
    {
        var wanted = new Dictionary<string, (FileBundle.Entry Entry, string? Remark)>(StringComparer.Ordinal);
        var others = new List<PhotosReport.Entry>();
        foreach (var entry in bundle.Entries)
        {
            if (entry.Refusal is { } refusal)
                others.Add(new PhotosReport.Entry(entry.Name, entry.IsOfSystem ? PhotoOutcome.Skipped : PhotoOutcome.Refused, Reason: refusal));
            else if (corrections.LeavesOut(entry.Name))
                others.Add(new PhotosReport.Entry(entry.Name, PhotoOutcome.LeftOut, Reason: "It was to be left out."));
            else if (PictureFiles.Contradiction(entry.Name, bundle.Peek(entry, StartBytes)) is not var (isTaken, remark))
                wanted[entry.Name] = (entry, null);
            else if (isTaken)
                wanted[entry.Name] = (entry, remark);
            else
                others.Add(new PhotosReport.Entry(entry.Name, PhotoOutcome.Refused, Reason: remark));
        }

        return (wanted, others);
    }

    private static string? Unknown(PhotoCorrections corrections, FileBundle bundle, KnownBoard[] boards)
    {
        var names = bundle.Entries.Select(entry => entry.Name).ToHashSet(StringComparer.Ordinal);
        return corrections.Paths.FirstOrDefault(path => !names.Contains(path)) is { } path ? $"places names “{path}”, which is not among the files."
            : corrections.Boards.Where(id => !Array.Exists(boards, board => board.Id.Value == id)).Select(id => (Guid?)id).FirstOrDefault() is { } board ? $"places names the board {board}, which the teardown does not have."
            : null;
    }

    private static async Task<PhotosReport.Entry> ForeseeAsync(FileBundle bundle, FileBundle.Entry file, PhotosReport.Entry entry, Batch batch, CancellationToken cancellationToken)
    {
        await using var stream = bundle.Open(file, out var reason);
        if (stream is null)
            return entry with { Outcome = PhotoOutcome.Refused, Reason = reason };
        try
        {
            var hash = (await Sha256.OfAsync(stream, cancellationToken)).Text;
            if (batch.Find(hash) is var (outcome, why))
                return entry with { Outcome = outcome, Reason = why };
            batch.Remember(hash, file.Name);
            return entry;
        }
        catch (InvalidDataException)
        {
            return Damaged(entry);
        }
    }

    private async Task<PhotosReport.Entry> AddAsync(FileBundle bundle, FileBundle.Entry file, PhotosReport.Entry entry, PhotoPlace place, Batch batch, CancellationToken cancellationToken)
    {
        await using var stream = bundle.Open(file, out var reason);
        if (stream is null)
            return entry with { Outcome = PhotoOutcome.Refused, Reason = reason };
        try
        {
            switch (await intake.ReceiveAsync(stream, cancellationToken))
            {
                case PhotoReceipt.Refused refused:
                    return entry with { Outcome = PhotoOutcome.Refused, Reason = refused.Text };
                case PhotoReceipt.NotChecked notChecked:
                    // A fault of the machine: the whole run is begun again later and passes over what it has added.
                    throw new IOException(notChecked.Text);
                case PhotoReceipt.Accepted accepted:
                    return await PlaceAsync(accepted, file.Name, entry, place, batch, cancellationToken);
                default:
                    throw new InvalidOperationException("Every receipt is known.");
            }
        }
        catch (InvalidDataException)
        {
            return Damaged(entry);
        }
    }

    private async Task<PhotosReport.Entry> PlaceAsync(PhotoReceipt.Accepted accepted, string path, PhotosReport.Entry entry, PhotoPlace place, Batch batch, CancellationToken cancellationToken)
    {
        switch (await photos.RunAsync(batch.Teardown, accepted.ToTakenIn(Receipts.FileNameOf(path)), place, batch.Who, cancellationToken))
        {
            case ChangeOutcome<PlacePhoto.Placed>.Done { Value: var placed } when !placed.WasThere || batch.IsOwn(placed, path):
                batch.Remember(accepted.Hash.Text, path);
                return entry with { Outcome = PhotoOutcome.Added, Photo = placed.Id.Value };
            case ChangeOutcome<PlacePhoto.Placed>.Done { Value: var placed }:
                var (outcome, why) = batch.Find(accepted.Hash.Text) ?? (PhotoOutcome.AlreadyThere, string.Create(CultureInfo.InvariantCulture, $"The same picture is photo {placed.Number} of the teardown."));
                return entry with { Outcome = outcome, Reason = why, Photo = placed.Id.Value };
            case var refused:
                return entry with { Outcome = PhotoOutcome.Refused, Reason = refused.Reason() };
        }
    }

    private static PhotosReport.Entry Damaged(PhotosReport.Entry entry) => entry with { Outcome = PhotoOutcome.Refused, Reason = "Its packed data are damaged. Pack the pictures again and send the whole file." };

    /// <summary>What is known of contents while a batch is under way.</summary>
    private sealed class Batch(TeardownRecord record, Request request, KnownBoard[] boards)
    {
        private readonly Dictionary<string, Photo> _there = record.Photos.GroupBy(photo => photo.Sha256).ToDictionary(group => group.Key, group => group.First(), StringComparer.Ordinal);
        private readonly Dictionary<string, string> _paths = new(StringComparer.Ordinal);

        public TeardownId Teardown => record.Id;

        public Editor Who => request.Who;

        /// <summary>What a content is already, and where; null for a new one.</summary>
        public (PhotoOutcome Outcome, string Why)? Find(string hash) =>
            _paths.TryGetValue(hash, out var first) ? (PhotoOutcome.Repeated, $"The same picture as “{first}”.")
            : _there.TryGetValue(hash, out var photo)
                ? (PhotoOutcome.AlreadyThere, string.Create(CultureInfo.InvariantCulture, $"The same picture is photo {photo.Position + 1} of the teardown{(boards.FirstOrDefault(board => board.Id == photo.BoardId) is { } board ? $", of {board.Name}" : "")}."))
            : null;

        /// <summary>Says that a content came under a path.</summary>
        public void Remember(string hash, string path) => _paths.TryAdd(hash, path);

        /// <summary>True for a photo that this very batch added before a break: it came under this path, and its id was made since the batch was asked for.</summary>
        public bool IsOwn(PlacePhoto.Placed placed, string path) =>
            placed.FileName == Receipts.FileNameOf(path) && DateTimeOffset.FromUnixTimeMilliseconds(MillisecondsOf(placed.Id.Value)) >= request.AskedAt.AddMilliseconds(-1);

        // The first 48 bits of a version-7 UUID (RFC 9562, 5.7).
        private static long MillisecondsOf(Guid id) => long.Parse(id.ToString("N").AsSpan(0, 12), NumberStyles.HexNumber, CultureInfo.InvariantCulture);
    }
}
