using Catalogue.Domain.Figures;
using Catalogue.Domain.Makers;
using Catalogue.Domain.Photos;
using Catalogue.Domain.Products;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Teardowns;

/// <summary>Lists teardowns: published ones for readers, all for the lab. Newest first.</summary>
/// <param name="contexts">Makes the context of each query.</param>
public sealed class TeardownsQuery(IDbContextFactory<CatalogueContext> contexts)
{
    /// <summary>The most rows of one page.</summary>
    public const int MaxLimit = 200;

    /// <summary>What is asked for.</summary>
    public sealed record Request
    {
        /// <summary>Words that must all stand in brand, name, model or title, or null.</summary>
        public string? Search { get; init; }

        /// <summary>Only this category, or null.</summary>
        public ProductCategory? Category { get; init; }

        /// <summary>Only products of this brand, or null.</summary>
        public MakerId? Brand { get; init; }

        /// <summary>The mark of the last row seen, or null.</summary>
        public string? After { get; init; }

        /// <summary>Rows a page, 1 to <see cref="MaxLimit"/>.</summary>
        public int Limit { get; init; } = 50;
    }

    /// <summary>Published teardowns, the latest publication first.</summary>
    public async Task<Page<TeardownListItem>> PublishedAsync(Request request, CancellationToken cancellationToken = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await RunAsync(context, request, context.Revisions.Where(row => row.State == RevisionState.Published), published: true, cancellationToken);
    }

    /// <summary>All teardowns with the latest of their revisions, the latest opened first. For signed-in people only.</summary>
    public async Task<Page<TeardownListItem>> LabAsync(Request request, CancellationToken cancellationToken = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        var latest = context.Revisions.Where(row => row.Number == context.Revisions.Where(other => other.TeardownId == row.TeardownId).Max(other => other.Number));
        return await RunAsync(context, request, latest, published: false, cancellationToken);
    }

    private static async Task<Page<TeardownListItem>> RunAsync(
        CatalogueContext context, Request request, IQueryable<Revision> revisions, bool published, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(request);
        var limit = Math.Clamp(request.Limit, 1, MaxLimit);
        if (request.Category is { } category)
            revisions = revisions.Where(row => row.Category == category);
        if (request.Brand is { } brand)
            revisions = revisions.Where(row => context.Teardowns.Any(teardown => teardown.Id == row.TeardownId && context.Products.Any(product => product.Id == teardown.ProductId && product.BrandId == brand)));
        foreach (var word in Words(request.Search))
        {
            var pattern = $"%{Escape(word)}%";
            revisions = revisions.Where(row => EF.Functions.ILike(row.Brand + " " + row.ProductName + " " + row.Model + " " + row.Title, pattern));
        }

        if (PageMark.TryParse(request.After) is { Moment: { } moment } mark)
        {
            var last = RevisionId.From(mark.Id);
            revisions = published
                ? revisions.Where(row => EF.Functions.LessThan(ValueTuple.Create(row.PublishedAt, row.Id), ValueTuple.Create((DateTimeOffset?)moment, last)))
                : revisions.Where(row => EF.Functions.LessThan(ValueTuple.Create(row.OpenedAt, row.Id), ValueTuple.Create(moment, last)));
        }

        var ordered = published
            ? revisions.OrderByDescending(row => row.PublishedAt).ThenByDescending(row => row.Id)
            : revisions.OrderByDescending(row => row.OpenedAt).ThenByDescending(row => row.Id);
        var rows = await ordered
            .Take(limit + 1)
            .Join(context.Teardowns, row => row.TeardownId, teardown => teardown.Id, (row, teardown) => new { Revision = row, Teardown = teardown })
            .AsNoTracking()
            .ToListAsync(cancellationToken);
        // The join promises no order, so it is laid once more over the few rows of the page.
        rows = published
            ? [.. rows.OrderByDescending(row => row.Revision.PublishedAt).ThenByDescending(row => row.Revision.Id.Value)]
            : [.. rows.OrderByDescending(row => row.Revision.OpenedAt).ThenByDescending(row => row.Revision.Id.Value)];
        var page = rows.Take(limit).ToList();
        var ids = page.Select(row => row.Revision.Id).ToList();
        var leads = await context.Photos.AsNoTracking()
            .Where(row => ids.Contains(row.RevisionId) && row.Subject == PhotoSubject.Product)
            .OrderBy(row => row.Position)
            .ThenBy(row => row.Id)
            .Select(row => new { row.RevisionId, row.Sha256, row.WidthPixels, row.HeightPixels, row.AltText })
            .ToListAsync(cancellationToken);
        var tallies = await context.Figures.AsNoTracking()
            .Where(row => ids.Contains(row.RevisionId) && row.Verdict != Verdict.NoLine)
            .GroupBy(row => new { row.RevisionId, row.Verdict })
            .Select(group => new { group.Key.RevisionId, group.Key.Verdict, Count = group.Count() })
            .ToListAsync(cancellationToken);

        var items = page.Select(row => new TeardownListItem
        {
            Id = row.Teardown.Id,
            Slug = row.Teardown.Slug,
            Number = row.Teardown.Number,
            Title = row.Revision.Title,
            Brand = row.Revision.Brand,
            ProductName = row.Revision.ProductName,
            Model = row.Revision.Model,
            Category = row.Revision.Category,
            Standfirst = row.Revision.Standfirst,
            RevisionNumber = row.Revision.Number,
            State = row.Revision.State,
            PublishedAt = row.Revision.PublishedAt,
            Lead = leads.Where(lead => lead.RevisionId == row.Revision.Id)
                .Select(lead => new TeardownListItem.LeadPicture(lead.Sha256, lead.WidthPixels, lead.HeightPixels, lead.AltText))
                .FirstOrDefault(),
            Tally = tallies.Where(tally => tally.RevisionId == row.Revision.Id).ToDictionary(tally => tally.Verdict, tally => tally.Count),
        }).ToList();
        var next = rows.Count > limit && page[^1].Revision is var final
            ? PageMark.Of((published ? final.PublishedAt : final.OpenedAt) ?? final.OpenedAt, final.Id.Value).ToString()
            : null;
        return new Page<TeardownListItem>(items, next);
    }

    internal static IEnumerable<string> Words(string? search) =>
        (Domain.Text.PlainText.Clean(search) ?? "").Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Take(8);

    internal static string Escape(string word) =>
        word.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("%", "\\%", StringComparison.Ordinal).Replace("_", "\\_", StringComparison.Ordinal);
}
