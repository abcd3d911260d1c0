using Catalogue.Data.Photos;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Articles;
using Catalogue.Domain.Findings;
using Catalogue.Domain.Photos;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Articles;

/// <summary>Opens the draft of a teardown from an article, in one transaction: all of it or nothing, and once for each run.</summary>
/// <param name="contexts">Makes the context of look-ups.</param>
/// <param name="create">Opens teardowns.</param>
/// <param name="clock">Tells the time.</param>
public sealed class OpenArticle(IDbContextFactory<CatalogueContext> contexts, CreateTeardown create, TimeProvider clock)
{
    /// <summary>Longest text of a step or a finding; a longer section becomes several.</summary>
    public const int MaxPartLength = 20_000;

    /// <summary>Longest text on how the work was done.</summary>
    public const int MaxMethodLength = 50_000;

    /// <summary>Longest heading of a step or a finding.</summary>
    public const int MaxHeadingLength = 200;

    /// <summary>What becomes a draft.</summary>
    /// <param name="Run">The run; asked for again it gives the draft that it opened.</param>
    /// <param name="Facts">What is known of the product; complete.</param>
    /// <param name="Text">The article as read.</param>
    /// <param name="FileName">The name of its file, or null.</param>
    /// <param name="Boards">Names of the boards to open, in order.</param>
    /// <param name="Pictures">Its pictures, taken in, in order; each content once.</param>
    /// <param name="Parts">Its steps, findings and methods, in order.</param>
    public sealed record Request(
        Guid Run, ArticleFacts Facts, ArticleText.Read Text, string? FileName, IReadOnlyList<string> Boards, IReadOnlyList<Picture> Pictures, IReadOnlyList<Part> Parts);

    /// <summary>A picture of the article.</summary>
    /// <param name="File">Its file, in the media store.</param>
    /// <param name="Place">Where it goes; a board is given by its name.</param>
    /// <param name="Words">Words for readers who do not see it, or null.</param>
    public sealed record Picture(PhotoChanges.TakenIn File, PhotoPlace Place, string? Words);

    /// <summary>A step, a finding or a method.</summary>
    /// <param name="Kind">Which; what is left out is none.</param>
    /// <param name="Heading">Its heading, not blank.</param>
    /// <param name="Markdown">Its text; a blank one makes a step of a heading and a picture.</param>
    /// <param name="Pictures">The contents of its pictures (SHA-256), in order.</param>
    public sealed record Part(ArticleSectionKind Kind, string Heading, string Markdown, IReadOnlyList<string> Pictures);

    /// <summary>A draft that was opened.</summary>
    /// <param name="Id">The teardown.</param>
    /// <param name="Slug">Its address.</param>
    /// <param name="Boards">Its boards by name.</param>
    /// <param name="Photos">Its photos by content (SHA-256).</param>
    public sealed record Opened(TeardownId Id, string Slug, IReadOnlyDictionary<string, BoardId> Boards, IReadOnlyDictionary<string, PhotoId> Photos);

    /// <summary>Opens it, or finds it where this run opened it before.</summary>
    public async Task<ChangeOutcome<Opened>> RunAsync(Request request, Editor who, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (await FindAsync(request.Run, cancellationToken) is { } there)
            return new ChangeOutcome<Opened>.Done(there);
        var facts = request.Facts;
        var outcome = await create.RunAsync(
            new CreateTeardown.Request(facts.Brand, facts.Name, facts.Model, facts.Category ?? throw new ArgumentException("The facts are complete.", nameof(request)), facts.Title),
            who,
            (draft, cancel) => FillAsync(draft, request, cancel),
            cancellationToken);
        return outcome is ChangeOutcome<CreateTeardown.Created>.Done
            ? new ChangeOutcome<Opened>.Done(await FindAsync(request.Run, cancellationToken) ?? throw new InvalidOperationException("What was just opened is gone."))
            : outcome.As<Opened>();
    }

    private async Task FillAsync(Draft draft, Request request, CancellationToken cancellationToken)
    {
        var (context, revision, now) = (draft.Context, draft.Revision.Id, clock.GetUtcNow());
        draft.Revision.TakenApartOn = request.Facts.Date;
        var boards = new Dictionary<string, BoardId>(StringComparer.OrdinalIgnoreCase);
        foreach (var name in request.Boards)
        {
            if (boards.TryAdd(name, BoardId.New()))
                context.Add(new Board { RevisionId = revision, Id = boards[name], Position = boards.Count - 1, Name = name });
        }

        var photos = new Dictionary<string, PhotoId>(StringComparer.Ordinal);
        foreach (var picture in request.Pictures)
        {
            var photo = await PhotoChanges.MakeAsync(draft, picture.File, now, photos.Count, cancellationToken);
            (photo.Subject, photo.Caption, photo.AltText) = (picture.Place.Subject, picture.Place.Caption, picture.Words);
            photo.BoardId = picture.Place.NewBoard is { } board ? boards[board] : null;
            photos.Add(picture.File.Sha256, photo.Id);
            context.Add(photo);
        }

        var (steps, findings) = (0, 0);
        foreach (var part in request.Parts)
        {
            var shown = part.Pictures.Select(hash => photos[hash]).Distinct().ToList();
            switch (part.Kind)
            {
                case ArticleSectionKind.Step:
                    context.Add(new Step
                    {
                        RevisionId = revision,
                        Id = StepId.New(),
                        Position = steps++,
                        Heading = part.Heading,
                        Markdown = part.Markdown.Length == 0 ? null : part.Markdown,
                        PhotoId = shown.Count > 0 ? shown[0] : null,
                    });
                    break;
                case ArticleSectionKind.Finding:
                    context.Add(new Finding
                    {
                        RevisionId = revision,
                        Id = FindingId.New(),
                        Position = findings++,
                        Heading = part.Heading,
                        Markdown = part.Markdown.Length == 0 ? part.Heading : part.Markdown,
                        PhotoIds = [.. shown.Select(photo => photo.Value)],
                    });
                    break;
                case ArticleSectionKind.Method:
                    draft.Revision.MethodMarkdown = draft.Revision.MethodMarkdown is { } before ? $"{before}\n\n{part.Markdown}" : part.Markdown;
                    break;
                default:
                    throw new ArgumentException("What is left out is no part.", nameof(request));
            }
        }

        context.Add(new ImportedArticle
        {
            TeardownId = draft.Teardown.Id,
            RunId = request.Run,
            FileName = request.FileName,
            Encoding = request.Text.Encoding,
            Text = request.Text.Text,
            Sha256 = ImportedArticleQuery.HashOf(request.Text.Text),
            ImportedAt = now,
        });
    }

    private async Task<Opened?> FindAsync(Guid run, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        if (await context.Teardowns.AsNoTracking().SingleOrDefaultAsync(row => context.ImportedArticles.Any(article => article.TeardownId == row.Id && article.RunId == run), cancellationToken) is not { } teardown)
            return null;
        var revision = await context.Revisions.Where(row => row.TeardownId == teardown.Id).OrderByDescending(row => row.Number).Select(row => row.Id).FirstAsync(cancellationToken);
        var boards = await context.Boards.AsNoTracking().Where(row => row.RevisionId == revision).OrderBy(row => row.Position).ToListAsync(cancellationToken);
        var photos = await context.Photos.AsNoTracking().Where(row => row.RevisionId == revision).OrderBy(row => row.Position).ToListAsync(cancellationToken);
        return new Opened(
            teardown.Id,
            teardown.Slug,
            boards.DistinctBy(board => board.Name, StringComparer.OrdinalIgnoreCase).ToDictionary(board => board.Name, board => board.Id, StringComparer.OrdinalIgnoreCase),
            photos.DistinctBy(photo => photo.Sha256).ToDictionary(photo => photo.Sha256, photo => photo.Id, StringComparer.Ordinal));
    }
}
