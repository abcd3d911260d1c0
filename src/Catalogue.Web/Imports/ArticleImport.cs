using System.Text;
using Catalogue.Data.Articles;
using Catalogue.Data.Components;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Articles;
using Catalogue.Domain.Components.Lists;
using Catalogue.Domain.Imports;
using Catalogue.Domain.Photos;
using Catalogue.Domain.Publishing;
using Catalogue.Domain.Teardowns;
using Catalogue.Media.Photos;

namespace Catalogue.Web.Imports;

/// <summary>
/// An old article as the draft of a teardown: a Markdown text alone, or with its pictures in a zip file or a folder. The draft is opened in one
/// transaction, its component lists follow; begun again after a break it goes on with the same draft.
/// </summary>
/// <param name="intake">Takes pictures in.</param>
/// <param name="articles">Finds articles brought in before.</param>
/// <param name="open">Opens the draft.</param>
/// <param name="components">Brings component lists in.</param>
internal sealed class ArticleImport(PhotoIntake intake, ImportedArticleQuery articles, OpenArticle open, ImportComponents components) : IImportWorker
{
    private const string DryRun = "dry_run";
    private const string NamelessBoard = "Board";
    private const int WidthInText = 960;
    private const int StartBytes = 4096;

    private static readonly string[] TextEndings = [".md", ".markdown", ".mdown", ".mkd"];

    public ImportKind Kind => ImportKind.Article;

    public long MaxFileBytes => 1024L * 1024 * 1024;

    public IReadOnlyDictionary<string, string> Options { get; } =
        new Dictionary<string, string>(ArticleChoices.Options) { [DryRun] = "true to say what would become of the article and change nothing" };

    public IReadOnlyDictionary<string, string> Fields => ArticleChoices.Fields;

    /// <summary>What is asked for.</summary>
    /// <param name="Run">The run; begun again it has the same id.</param>
    /// <param name="IsDryRun">True to change nothing.</param>
    /// <param name="Choices">What a person said.</param>
    /// <param name="Who">Who brings the article in.</param>
    public sealed record Request(Guid Run, bool IsDryRun, ArticleChoices Choices, Editor Who);

    public Task<Refusal?> CheckAsync(IReadOnlyDictionary<string, string> options, string? role, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(options);
        if (ImportSwitch.Check(options, DryRun) is { } refusal)
            return Task.FromResult<Refusal?>(refusal);
        ArticleChoices.TryParse(options, out refusal);
        return Task.FromResult(refusal);
    }

    public async Task<ImportOutcome> RunAsync(ImportWork work, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(work);
        if (ArticleChoices.TryParse(work.Run.Options, out var refusal) is not { } choices)
            return new ImportOutcome.Refused(refusal!.Reason);
        var request = new Request(work.Run.Id.Value, ImportSwitch.IsOn(work.Run.Options, DryRun), choices, work.Run.Editor);
        var start = new byte[4];
        var isZip = await work.File.ReadAtLeastAsync(start, start.Length, throwOnEndOfStream: false, cancellationToken) == start.Length && start.AsSpan().StartsWith("PK"u8) && start[2] < 9;
        work.File.Position = 0;
        if (!isZip)
            return await RunAsync(await ReadTextAsync(work.File, cancellationToken), work.Run.FileName, request, work.ReportAsync, cancellationToken);
        switch (ZipBundle.Open(work.File))
        {
            case FileBundle.Opening.Opened opened:
                using (opened.Bundle)
                    return await RunAsync(opened.Bundle, request, work.ReportAsync, cancellationToken);
            case FileBundle.Opening.Refused refused:
                return new ImportOutcome.Refused(refused.Reason);
            default:
                throw new InvalidOperationException("A file is opened or refused.");
        }
    }

    /// <summary>Runs over an article that came alone.</summary>
    public Task<ImportOutcome> RunAsync(byte[] content, string? fileName, Request request, Func<int, int, CancellationToken, Task> report, CancellationToken cancellationToken) =>
        RunAsync(null, content, fileName, request, report, cancellationToken);

    /// <summary>Runs over an article with the files beside it.</summary>
    public async Task<ImportOutcome> RunAsync(FileBundle bundle, Request request, Func<int, int, CancellationToken, Task> report, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(bundle);
        ArgumentNullException.ThrowIfNull(request);
        var texts = bundle.Entries.Where(entry => entry.Refusal is null && Array.Exists(TextEndings, ending => entry.Name.EndsWith(ending, StringComparison.OrdinalIgnoreCase))).ToList();
        var wanted = request.Choices.Article;
        var chosen = wanted is null ? texts is [var only] ? only : null : bundle.Entries.FirstOrDefault(entry => entry.Name == wanted && entry.Refusal is null);
        if (chosen is null)
        {
            return new ImportOutcome.Refused(
                wanted is not null ? $"There is no “{wanted}” among the files that can be read."
                : texts.Count == 0 ? $"There is no article among the files: it ends in {string.Join(", ", TextEndings)}."
                : $"There are several texts; say which one is the article: {string.Join(", ", texts.Take(10).Select(entry => entry.Name))}.");
        }

        await using var stream = bundle.Open(chosen, out var reason);
        if (stream is null)
            return new ImportOutcome.Refused($"“{chosen.Name}” cannot be read. {reason}");
        try
        {
            return await RunAsync(bundle, await ReadTextAsync(stream, cancellationToken), chosen.Name, request, report, cancellationToken);
        }
        catch (InvalidDataException)
        {
            return new ImportOutcome.Refused($"“{chosen.Name}” is damaged in the zip file. Pack the files again.");
        }
    }

    private async Task<ImportOutcome> RunAsync(
        FileBundle? bundle, byte[] content, string? fileName, Request request, Func<int, int, CancellationToken, Task> report, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(request);
        switch (ArticleText.Decode(content, request.Choices.Encoding))
        {
            case ArticleText.Refused refused:
                return new ImportOutcome.Refused(refused.Reason);
            case ArticleText.Read text:
                return ArticleReader.Read(text.Text, out var refusal) is { } article
                    ? await RunAsync(new Source(article, text, fileName, bundle), request, report, cancellationToken)
                    : new ImportOutcome.Refused(refusal!);
            default:
                throw new InvalidOperationException("A text is read or refused.");
        }
    }

    private async Task<ImportOutcome> RunAsync(Source source, Request request, Func<int, int, CancellationToken, Task> report, CancellationToken cancellationToken)
    {
        var (article, choices) = (source.Article, request.Choices);
        if (choices.Sections.Keys.Any(index => index >= article.Sections.Count))
            return new ImportOutcome.Refused($"sections names a section that is not there; the article has {article.Sections.Count}, counted from 0.");
        var plan = new Plan(source, choices);
        if (choices.Boards.Keys.Any(index => index >= plan.Lists.Count))
            return new ImportOutcome.Refused($"boards names a list that is not there; the article has {plan.Lists.Count}, counted from 0.");
        var facts = choices.Facts.Or(article.Facts);
        var sameAs = await articles.SameAsync(source.Text.Text, request.Run, cancellationToken);
        if (request.IsDryRun)
            return new ImportOutcome.Done(Report(null, facts, source, plan, sameAs, null));
        if (facts.Missing.Count > 0)
            return new ImportOutcome.Refused($"The article does not say the {string.Join(", the ", facts.Missing)} of the product; give what is missing.", Report(null, facts, source, plan, sameAs, null));

        for (var i = 0; i < plan.Pictures.Count; i++)
        {
            await report(i, plan.Pictures.Count, cancellationToken);
            await TakeInAsync(plan.Pictures[i], source.Bundle, cancellationToken);
        }

        await report(plan.Pictures.Count, plan.Pictures.Count, cancellationToken);
        switch (await open.RunAsync(plan.ToRequest(request.Run, facts), request.Who, cancellationToken))
        {
            case ChangeOutcome<OpenArticle.Opened>.Done { Value: var opened }:
                await BringListsAsync(plan, opened, request.Who, cancellationToken);
                return new ImportOutcome.Done(Report(opened.Slug, facts, source, plan, sameAs, opened));
            case var refused:
                return new ImportOutcome.Refused(refused.Reason(), Report(null, facts, source, plan, sameAs, null));
        }
    }

    private static async Task<byte[]> ReadTextAsync(Stream stream, CancellationToken cancellationToken)
    {
        // One byte past the limit says that there are more.
        var bytes = new byte[ArticleText.MaxBytes + 1];
        return bytes[..await stream.ReadAtLeastAsync(bytes, bytes.Length, throwOnEndOfStream: false, cancellationToken)];
    }

    private async Task TakeInAsync(PlannedPicture picture, FileBundle? bundle, CancellationToken cancellationToken)
    {
        if (picture.Entry is not { } entry)
            return;
        await using var stream = bundle!.Open(entry, out var reason);
        if (stream is null)
        {
            picture.Refuse(reason!);
            return;
        }

        try
        {
            switch (await intake.ReceiveAsync(stream, cancellationToken))
            {
                case PhotoReceipt.Refused refused:
                    picture.Refuse(refused.Text);
                    break;
                case PhotoReceipt.NotChecked notChecked:
                    throw new IOException(notChecked.Text);
                case PhotoReceipt.Accepted accepted:
                    picture.File = accepted.ToTakenIn(Receipts.FileNameOf(entry.Name));
                    break;
                default:
                    throw new InvalidOperationException("Every receipt is known.");
            }
        }
        catch (InvalidDataException)
        {
            picture.Refuse("Its packed data are damaged. Pack the files again and send the whole of them.");
        }
    }

    // Each list is a change of its own; one that a run brought in before a break meets its own components and changes nothing.
    private async Task BringListsAsync(Plan plan, OpenArticle.Opened opened, Editor who, CancellationToken cancellationToken)
    {
        foreach (var list in plan.Lists.Where(list => list.Board is not null))
            (list.Imported, list.Rejected, list.Warnings) = await ImportAsync(list, opened.Boards[list.Board!], who, cancellationToken);
    }

    private async Task<(int Imported, IReadOnlyList<RejectedRow> Rejected, IReadOnlyList<string> Warnings)> ImportAsync(
        PlannedList list, BoardId board, Editor who, CancellationToken cancellationToken) =>
        await components.RunAsync(board, Encoding.UTF8.GetBytes(list.Table.Text), null, dryRun: false, who, new ComponentListOptions("UTF-8", ArticleTable.Separator), cancellationToken) switch
        {
            ChangeOutcome<ImportComponents.Report>.Done { Value: var done } => (done.Imported, done.List.Rejected, done.Warnings),
            var refused => (0, [], [refused.Reason()]),
        };

    private static ArticleReport Report(string? slug, ArticleFacts facts, Source source, Plan plan, string? sameAs, OpenArticle.Opened? opened)
    {
        string[] warnings =
        [
            .. source.Text.Warnings,
            .. source.Article.Warnings,
            .. source.Bundle?.GuessedEncoding is { } guessed ? [$"Names in the zip file do not say their encoding; {guessed} is a guess."] : Array.Empty<string>(),
            .. sameAs is null ? Array.Empty<string>() : [$"The same text was brought in before, as “{sameAs}”."],
        ];
        return new ArticleReport(
            slug,
            opened is null,
            facts.Title,
            facts.Brand,
            facts.Name,
            facts.Model,
            facts.Category,
            facts.Date,
            facts.Missing,
            source.Bundle is null ? null : source.FileName,
            source.Text.Encoding,
            sameAs,
            [.. source.Article.Sections.Select((section, index) => new ArticleReport.Section(index, section.Heading, plan.Kinds[index], section.Markdown(_ => null).Length, section.TasksDone, section.Tasks, section.Footnotes))],
            [.. plan.Pictures.Select(picture => picture.Report(opened))],
            [.. plan.Lists.Select(list => new ArticleReport.List(list.Table.Index, list.Section, list.Board, list.IsBoardSure, list.Table.Rows, list.Board is null ? null : list.Imported, list.Rejected, list.Warnings))],
            plan.Unused,
            warnings);
    }

    /// <summary>An article with what came beside it.</summary>
    private sealed record Source(Article Article, ArticleText.Read Text, string? FileName, FileBundle? Bundle);

    /// <summary>A component list and the board that it goes to.</summary>
    private sealed class PlannedList
    {
        public PlannedList(ArticleTable table, int section, string? board, bool isBoardSure)
        {
            (Table, Section, Board, IsBoardSure) = (table, section, board, isBoardSure);
            var read = ArticleTable.Read(table.Text);
            (Imported, Rejected, Warnings) = (read?.Rows.Count ?? 0, read?.Rejected ?? [], read?.Warnings ?? []);
        }

        public ArticleTable Table { get; }

        public int Section { get; }

        public string? Board { get; }

        public bool IsBoardSure { get; }

        public int Imported { get; set; }

        public IReadOnlyList<RejectedRow> Rejected { get; set; }

        public IReadOnlyList<string> Warnings { get; set; }
    }

    /// <summary>A picture, where it lies and where it goes.</summary>
    private sealed class PlannedPicture(ArticlePicture picture, int section, string? path, FileBundle.Entry? entry, PhotoPlace? place, string? reason)
    {
        private string? _reason = reason;

        public ArticlePicture Picture => picture;

        public int Section => section;

        public FileBundle.Entry? Entry => entry;

        public PhotoPlace Place => place!;

        /// <summary>The file, once it was taken in.</summary>
        public Data.Photos.PhotoChanges.TakenIn? File { get; set; }

        private bool IsRefused { get; set; } = entry is null;

        public void Refuse(string why) => (_reason, IsRefused) = (why, true);

        public ArticleReport.Picture Report(OpenArticle.Opened? opened) => new(
            picture.Index,
            section,
            picture.Address,
            path,
            IsRefused ? PhotoOutcome.Refused : opened is null ? PhotoOutcome.WouldAdd : PhotoOutcome.Added,
            IsRefused ? null : PhotosReport.Place.From(Place, []),
            _reason,
            File is { } file && opened?.Photos.TryGetValue(file.Sha256, out var photo) is true ? photo.Value : null);
    }

    /// <summary>What becomes of each part of an article.</summary>
    private sealed class Plan
    {
        private readonly Source _source;
        private readonly Dictionary<int, PlannedPicture> _byIndex;
        private readonly Dictionary<string, FileBundle.Entry> _files;
        private readonly ILookup<string, FileBundle.Entry> _likeNamed;

        public Plan(Source source, ArticleChoices choices)
        {
            _source = source;
            _files = source.Bundle?.Entries.DistinctBy(entry => entry.Name).ToDictionary(entry => entry.Name, StringComparer.Ordinal) ?? [];
            _likeNamed = _files.Values.ToLookup(entry => Composed(entry.Name), StringComparer.OrdinalIgnoreCase);
            Kinds = [.. source.Article.Sections.Select((section, index) => choices.Sections.GetValueOrDefault(index, section.Kind))];
            // What is left out takes its pictures and lists along.
            var kept = source.Article.Sections.Index().Where(item => Kinds[item.Index] is not ArticleSectionKind.LeaveOut).ToList();
            Lists = [.. source.Article.Sections.Index().SelectMany(item => item.Item.Lists.Select(table => Planned(table, item.Index, choices)))];
            KnownBoard[] boards = [.. Lists.Select(list => list.Board).OfType<string>().Distinct(StringComparer.OrdinalIgnoreCase).Select((name, position) => new KnownBoard(BoardId.New(), position, name))];
            Pictures = [.. kept.SelectMany(item => item.Item.Pictures.Select(picture => Planned(picture, item.Index, boards)))];
            _byIndex = Pictures.ToDictionary(picture => picture.Picture.Index);
            Boards = [.. boards.Select(board => board.Name).Concat(Pictures.Where(picture => picture.Entry is not null).Select(picture => picture.Place.NewBoard).OfType<string>()).Distinct(StringComparer.OrdinalIgnoreCase)];
            var used = Pictures.Select(picture => picture.Entry?.Name).Append(source.FileName).ToHashSet(StringComparer.Ordinal);
            Unused = [.. source.Bundle?.Entries.Where(entry => !entry.IsOfSystem && !used.Contains(entry.Name)).Select(entry => entry.Refusal is { } refusal ? $"{entry.Name}: {refusal}" : entry.Name) ?? []];
        }

        public IReadOnlyList<ArticleSectionKind> Kinds { get; }

        public IReadOnlyList<PlannedList> Lists { get; }

        public IReadOnlyList<PlannedPicture> Pictures { get; }

        public IReadOnlyList<string> Boards { get; }

        public IReadOnlyList<string> Unused { get; }

        public OpenArticle.Request ToRequest(Guid run, ArticleFacts facts)
        {
            var pictures = Pictures.Where(picture => picture.File is not null).DistinctBy(picture => picture.File!.Sha256)
                .Select(picture => new OpenArticle.Picture(picture.File!, picture.Place, picture.Picture.Words)).ToList();
            var parts = new List<OpenArticle.Part>();
            foreach (var (index, section) in _source.Article.Sections.Index())
            {
                if (Kinds[index] is not ArticleSectionKind.LeaveOut)
                    parts.AddRange(Parts(section, index, facts.Title!));
            }

            var used = pictures.Select(picture => picture.Place.NewBoard).Concat(Lists.Select(list => list.Board)).OfType<string>().ToHashSet(StringComparer.OrdinalIgnoreCase);
            return new OpenArticle.Request(run, facts, _source.Text, Receipts.FileNameOf(_source.FileName), [.. Boards.Where(used.Contains)], pictures, parts);
        }

        // A section as it will stand: lists are on their boards, pictures are photos, the first one of a step stands beside it.
        private IEnumerable<OpenArticle.Part> Parts(ArticleSection section, int index, string title)
        {
            var kind = Kinds[index];
            var shown = section.Pictures.Select(picture => _byIndex.GetValueOrDefault(picture.Index)).Where(picture => picture?.File is not null).Select(picture => picture!.File!.Sha256).Distinct().ToList();
            var beside = kind is ArticleSectionKind.Step ? FirstAlone(section) : null;
            var text = section.Markdown(piece =>
                piece.List is { } table ? Lists[table.Index].Board is null ? null : ""
                : _byIndex.GetValueOrDefault(piece.Picture!.Index) is not { File: { } file } ? null
                : piece.Picture == beside ? ""
                : InText(piece.Picture, file));
            if (text.Length == 0 && shown.Count == 0)
                yield break;
            var heading = section.Heading ?? title;
            var number = 1;
            foreach (var part in Cut(text, kind is ArticleSectionKind.Method ? OpenArticle.MaxMethodLength : OpenArticle.MaxPartLength))
            {
                var named = number == 1 ? heading : FormattableString.Invariant($"{heading[..Math.Min(heading.Length, OpenArticle.MaxHeadingLength - 8)]} ({number})");
                yield return new OpenArticle.Part(kind, named, part, number++ == 1 ? shown : []);
            }
        }

        private ArticlePicture? FirstAlone(ArticleSection section)
        {
            for (var i = 0; i < section.Pieces.Count; i++)
            {
                if (section.Pieces[i].Picture is not { } picture || _byIndex.GetValueOrDefault(picture.Index)?.File is null)
                    continue;
                // The first photo is the one beside the step; it leaves the text only where nothing else stands on its line.
                var before = i == 0 ? "" : section.Pieces[i - 1].Written;
                var after = i + 1 == section.Pieces.Count ? "" : section.Pieces[i + 1].Written;
                return before.TrimEnd(' ') is "" or [.., '\n'] && after.TrimStart(' ', '\r') is "" or ['\n', ..] ? picture : null;
            }

            return null;
        }

        private static string InText(ArticlePicture picture, Data.Photos.PhotoChanges.TakenIn file)
        {
            var width = RenditionWidths.For(file.WidthPixels).Last(width => width <= WidthInText || width == RenditionWidths.For(file.WidthPixels)[0]);
            var words = (picture.Words ?? "").Replace("[", "(", StringComparison.Ordinal).Replace("]", ")", StringComparison.Ordinal);
            return $"![{words}]({Addresses.Rendition(file.Sha256, width)})";
        }

        // At blank lines where there are some; a fence that is cut stays readable as text.
        private static IEnumerable<string> Cut(string text, int longest)
        {
            while (text.Length > longest)
            {
                var at = text.LastIndexOf("\n\n", longest, StringComparison.Ordinal);
                at = at > longest / 2 ? at : char.IsHighSurrogate(text[longest - 1]) ? longest - 1 : longest;
                yield return text[..at].TrimEnd();
                text = text[at..].TrimStart();
            }

            yield return text;
        }

        private PlannedList Planned(ArticleTable table, int section, ArticleChoices choices)
        {
            if (Kinds[section] is ArticleSectionKind.LeaveOut)
                return new PlannedList(table, section, null, true);
            return choices.Boards.TryGetValue(table.Index, out var given)
                ? new PlannedList(table, section, Domain.Text.PlainText.Clean(given), true)
                : new PlannedList(table, section, table.Board ?? NamelessBoard, table.Board is not null);
        }

        private PlannedPicture Planned(ArticlePicture picture, int section, IReadOnlyList<KnownBoard> boards)
        {
            if (picture.Path is null)
                return new PlannedPicture(picture, section, null, null, null, picture.Refusal);
            var folder = _source.FileName?.LastIndexOf('/') is { } slash and >= 0 ? _source.FileName[..(slash + 1)] : "";
            var path = folder + picture.Path;
            if (_source.Bundle is null)
                return new PlannedPicture(picture, section, path, null, null, "The article came alone. Send it with its pictures in a zip file.");
            if (Find(path) is not { } entry)
                return new PlannedPicture(picture, section, path, null, null, "There is no such file beside the article.");
            if (entry.Refusal is { } refusal)
                return new PlannedPicture(picture, section, path, null, null, refusal);
            var contradiction = PictureFiles.Contradiction(entry.Name, _source.Bundle.Peek(entry, StartBytes));
            return contradiction is (false, var why)
                ? new PlannedPicture(picture, section, path, null, null, why)
                : new PlannedPicture(picture, section, path, entry, PlaceOf(picture, section, boards), contradiction?.Remark);
        }

        // As written, else without regard to case and composition, as the disks of some systems find it.
        private FileBundle.Entry? Find(string path) => _files.GetValueOrDefault(path) ?? _likeNamed[Composed(path)].FirstOrDefault();

        private static string Composed(string name) => name.IsNormalized() ? name : name.Normalize();

        // By its name, else by its words where those are sure, else as a picture of its step.
        private PhotoPlace PlaceOf(ArticlePicture picture, int section, IReadOnlyList<KnownBoard> boards)
        {
            var byName = PhotoNames.Propose([picture.Path!], boards)[0];
            var byWords = picture.Words is { } words ? PhotoNames.Propose([words.Replace('/', ' ')], boards)[0] : null;
            var place = byName.IsSure ? byName.Place
                : byWords is { IsSure: true } ? byWords.Place
                : new PhotoPlace(Kinds[section] is ArticleSectionKind.Step ? PhotoSubject.Step : PhotoSubject.Detail, Caption: byName.Place.Caption);
            var caption = picture.Title ?? picture.Words ?? place.Caption;
            return place with
            {
                BoardId = null,
                NewBoard = boards.FirstOrDefault(board => board.Id == place.BoardId)?.Name ?? place.NewBoard,
                Caption = caption is { Length: > Photo.MaxCaptionLength } ? caption[..Photo.MaxCaptionLength] : caption,
            };
        }
    }
}
