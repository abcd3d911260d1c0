using Catalogue.Data.Teardowns;
using Catalogue.Domain.Makers;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Makers;

/// <summary>Lists makers by name. Readers see those with a published product.</summary>
/// <param name="contexts">Makes the context of each query.</param>
public sealed class MakersQuery(IDbContextFactory<CatalogueContext> contexts)
{
    /// <summary>A maker in a list.</summary>
    /// <param name="Id">Its id.</param>
    /// <param name="Slug">Its address.</param>
    /// <param name="Name">Its name.</param>
    /// <param name="Teardowns">How many published teardowns are of its products.</param>
    public sealed record Row(MakerId Id, string Slug, string Name, int Teardowns);

    /// <summary>A page of makers.</summary>
    /// <param name="search">Part of a name, or null for all.</param>
    /// <param name="after">The mark of the last row seen, or null.</param>
    /// <param name="limit">Rows a page, 1 to 200.</param>
    /// <param name="seesDrafts">True for people and tokens that may see drafts.</param>
    /// <param name="cancellationToken">Cancels the query.</param>
    public async Task<Page<Row>> RunAsync(string? search, string? after, int limit, bool seesDrafts, CancellationToken cancellationToken = default)
    {
        limit = Math.Clamp(limit, 1, 200);
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        var makers = Visible(context, seesDrafts);
        if (MakerName.Key(search) is { Length: > 0 } key)
        {
            var pattern = key.Length < 3 ? key + "%" : "%" + key + "%";
            makers = makers.Where(row => EF.Functions.Like(row.NameKey, pattern));
        }
        else if (!string.IsNullOrWhiteSpace(search))
        {
            return new Page<Row>([], null);
        }

        if (PageMark.TryParse(after) is { } mark)
        {
            var last = MakerId.From(mark.Id);
            makers = makers.Where(row => EF.Functions.GreaterThan(ValueTuple.Create(row.NameKey, row.Id), ValueTuple.Create(mark.Key, last)));
        }

        var rows = await makers.OrderBy(row => row.NameKey).ThenBy(row => row.Id).Take(limit + 1).Select(row => new { row.Id, row.Slug, row.Name, row.NameKey, Teardowns = Published(context).Count(teardown => teardown.BrandId == row.Id) }).ToListAsync(cancellationToken);
        var page = rows.Take(limit).ToList();
        return new Page<Row>(
            [.. page.Select(row => new Row(row.Id, row.Slug, row.Name, row.Teardowns))],
            rows.Count > limit ? new PageMark(page[^1].NameKey, page[^1].Id.Value).ToString() : null);
    }

    /// <summary>The maker at an address, or null when there is none that the reader may see.</summary>
    public async Task<Row?> FindAsync(string slug, bool seesDrafts, CancellationToken cancellationToken = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        var found = await Visible(context, seesDrafts)
            .Where(row => row.Slug == slug)
            .Select(row => new { row.Id, row.Slug, row.Name, Teardowns = Published(context).Count(teardown => teardown.BrandId == row.Id) })
            .SingleOrDefaultAsync(cancellationToken);
        return found is null ? null : new Row(found.Id, found.Slug, found.Name, found.Teardowns);
    }

    private static IQueryable<Maker> Visible(CatalogueContext context, bool seesDrafts) =>
        seesDrafts ? context.Makers.AsNoTracking() : context.Makers.AsNoTracking().Where(row => Published(context).Any(teardown => teardown.BrandId == row.Id));

    private static IQueryable<PublishedOf> Published(CatalogueContext context) =>
        context.Revisions.Where(row => row.State == RevisionState.Published)
            .Join(context.Teardowns, row => row.TeardownId, row => row.Id, (_, teardown) => teardown.ProductId)
            .Join(context.Products, row => row, product => product.Id, (_, product) => new PublishedOf { BrandId = product.BrandId });

    private sealed class PublishedOf
    {
        public MakerId BrandId { get; init; }
    }
}
