using Catalogue.Domain.Components;
using Catalogue.Domain.Makers;
using Catalogue.Domain.Products;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Makers;

/// <summary>Reads one maker with its other names, its published products and the families that it makes.</summary>
/// <param name="contexts">Makes the context of each query.</param>
public sealed class MakerQuery(IDbContextFactory<CatalogueContext> contexts)
{
    /// <summary>Most entries of each list.</summary>
    public const int MaxInList = 200;

    /// <summary>A maker.</summary>
    /// <param name="Id">Its id.</param>
    /// <param name="Slug">Its address.</param>
    /// <param name="Name">Its name.</param>
    /// <param name="OtherNames">Former names, other spellings, logos in words; by text.</param>
    /// <param name="Products">Its products with a published teardown, by name.</param>
    /// <param name="Families">The part families it is known for, as far as the asker may see them; by base number.</param>
    public sealed record Record(MakerId Id, string Slug, string Name, IReadOnlyList<string> OtherNames, IReadOnlyList<Product> Products, IReadOnlyList<Family> Families);

    /// <summary>A product.</summary>
    /// <param name="Name">Its name.</param>
    /// <param name="Model">Its model.</param>
    /// <param name="Category">Its category.</param>
    /// <param name="Teardowns">The addresses of its published teardowns, the oldest first.</param>
    public sealed record Product(string Name, string Model, ProductCategory Category, IReadOnlyList<string> Teardowns);

    /// <summary>A family.</summary>
    /// <param name="Slug">Its address.</param>
    /// <param name="Name">Its base number.</param>
    /// <param name="FunctionClass">Its function class, or null.</param>
    /// <param name="Designs">In how many published teardowns it is used.</param>
    public sealed record Family(string Slug, string Name, FunctionClass? FunctionClass, int Designs);

    /// <summary>The maker at an address, or null where the asker may see none: readers see makers with a published product, or with a family that a published teardown uses.</summary>
    /// <param name="slug">The address.</param>
    /// <param name="seesDrafts">True for people and tokens that may see drafts.</param>
    /// <param name="cancellationToken">Cancels the query.</param>
    public async Task<Record?> RunAsync(string slug, bool seesDrafts, CancellationToken cancellationToken = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        context.ChangeTracker.QueryTrackingBehavior = QueryTrackingBehavior.NoTracking;
        if (await context.Makers.SingleOrDefaultAsync(row => row.Slug == slug, cancellationToken) is not { } maker)
            return null;
        var products = await ProductsAsync(context, maker.Id, cancellationToken);
        var families = await FamiliesAsync(context, maker.Id, seesDrafts, cancellationToken);
        if (!seesDrafts && products.Count == 0 && families.Count == 0)
            return null;
        var names = await context.Set<MakerAlias>().Where(row => row.MakerId == maker.Id).OrderBy(row => row.NameKey).Take(MaxInList).Select(row => row.Name).ToListAsync(cancellationToken);
        return new Record(maker.Id, maker.Slug, maker.Name, names, products, families);
    }

    private static async Task<List<Product>> ProductsAsync(CatalogueContext context, MakerId maker, CancellationToken cancellationToken)
    {
        var rows = await context.Products.Where(row => row.BrandId == maker)
            .Join(context.Teardowns, product => product.Id, teardown => teardown.ProductId, (product, teardown) => new { Product = product, Teardown = teardown })
            .Where(row => context.Revisions.Any(revision => revision.TeardownId == row.Teardown.Id && revision.State == RevisionState.Published))
            .OrderBy(row => row.Product.Name).ThenBy(row => row.Product.Model).ThenBy(row => row.Teardown.Id)
            .Take(MaxInList)
            .Select(row => new { row.Product.Id, row.Product.Name, row.Product.Model, row.Product.Category, row.Teardown.Slug })
            .ToListAsync(cancellationToken);
        return [.. rows.GroupBy(row => row.Id).Select(group => new Product(group.First().Name, group.First().Model, group.First().Category, [.. group.Select(row => row.Slug)]))];
    }

    private static async Task<List<Family>> FamiliesAsync(CatalogueContext context, MakerId maker, bool seesDrafts, CancellationToken cancellationToken)
    {
        var own = context.FamilyMakers.Where(row => row.MakerId == maker)
            .Join(context.Families, row => row.FamilyId, family => family.Id, (_, family) => family.MergedIntoId ?? family.Id);
        var rows = await context.Families.Where(row => own.Contains(row.Id))
            .Select(row => new
            {
                row.Slug,
                row.Name,
                row.FunctionClass,
                Designs = context.FamilyLinks.Where(link => link.FamilyId == row.Id)
                    .Join(context.Revisions.Where(revision => revision.State == RevisionState.Published), link => link.RevisionId, revision => revision.Id, (_, revision) => revision.TeardownId)
                    .Distinct().Count(),
            })
            .Where(row => seesDrafts || row.Designs > 0)
            .OrderBy(row => row.Name).ThenBy(row => row.Slug)
            .Take(MaxInList)
            .ToListAsync(cancellationToken);
        return [.. rows.Select(row => new Family(row.Slug, row.Name, row.FunctionClass, row.Designs))];
    }
}
