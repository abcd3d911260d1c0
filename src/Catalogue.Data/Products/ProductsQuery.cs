using Catalogue.Data.Teardowns;
using Catalogue.Domain.Products;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Products;

/// <summary>Lists products by brand and name, with their teardowns. Readers see those with a published teardown.</summary>
/// <param name="contexts">Makes the context of each query.</param>
public sealed class ProductsQuery(IDbContextFactory<CatalogueContext> contexts)
{
    /// <summary>A product in a list.</summary>
    /// <param name="Brand">The brand.</param>
    /// <param name="Name">The name.</param>
    /// <param name="Model">The model designation.</param>
    /// <param name="Category">The category.</param>
    /// <param name="Teardowns">The addresses of its teardowns that the reader may see, oldest first.</param>
    public sealed record Row(string Brand, string Name, string Model, ProductCategory Category, IReadOnlyList<string> Teardowns);

    /// <summary>A page of products.</summary>
    public async Task<Page<Row>> RunAsync(string? search, ProductCategory? category, string? after, int limit, bool seesDrafts, CancellationToken cancellationToken = default)
    {
        limit = Math.Clamp(limit, 1, 200);
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        var teardowns = seesDrafts
            ? context.Teardowns
            : context.Teardowns.Where(row => context.Revisions.Any(revision => revision.TeardownId == row.Id && revision.State == RevisionState.Published));
        var products = context.Products.Where(row => teardowns.Any(teardown => teardown.ProductId == row.Id))
            .Join(context.Makers, row => row.BrandId, maker => maker.Id, (product, maker) => new { Product = product, Brand = maker.Name });
        if (category is { } only)
            products = products.Where(row => row.Product.Category == only);
        foreach (var word in TeardownsQuery.Words(search))
        {
            var pattern = $"%{TeardownsQuery.Escape(word)}%";
            products = products.Where(row => EF.Functions.ILike(row.Brand + " " + row.Product.Name + " " + row.Product.Model, pattern));
        }

        if (PageMark.TryParse(after) is { } mark)
        {
            var last = ProductId.From(mark.Id);
            products = products.Where(row => EF.Functions.GreaterThan(ValueTuple.Create(row.Brand + " " + row.Product.Name, row.Product.Id), ValueTuple.Create(mark.Key, last)));
        }

        var rows = await products
            .OrderBy(row => row.Brand + " " + row.Product.Name)
            .ThenBy(row => row.Product.Id)
            .Take(limit + 1)
            .Select(row => new { row.Product.Id, row.Brand, row.Product.Name, row.Product.Model, row.Product.Category })
            .ToListAsync(cancellationToken);
        var page = rows.Take(limit).ToList();
        var ids = page.Select(row => row.Id).ToList();
        var slugs = (await teardowns.Where(row => ids.Contains(row.ProductId)).OrderBy(row => row.Number).Select(row => new { row.ProductId, row.Slug }).ToListAsync(cancellationToken)).ToLookup(row => row.ProductId, row => row.Slug);
        return new Page<Row>(
            [.. page.Select(row => new Row(row.Brand, row.Name, row.Model, row.Category, [.. slugs[row.Id]]))],
            rows.Count > limit ? new PageMark(page[^1].Brand + " " + page[^1].Name, page[^1].Id.Value).ToString() : null);
    }
}
