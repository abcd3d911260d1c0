using Catalogue.Data.Teardowns;
using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Families;

/// <summary>Lists part families by name. Readers see those that a published teardown uses; the lab sees all.</summary>
/// <param name="contexts">Makes the context of each query.</param>
public sealed class FamiliesQuery(IDbContextFactory<CatalogueContext> contexts)
{
    /// <summary>A family in a list.</summary>
    /// <param name="Slug">Its address.</param>
    /// <param name="Name">The base number as first written.</param>
    /// <param name="FunctionClass">Its function class, or null.</param>
    /// <param name="Designs">How many published teardowns use it.</param>
    /// <param name="Packages">The packages it comes in, as recorded with it.</param>
    public sealed record Row(string Slug, string Name, FunctionClass? FunctionClass, int Designs, IReadOnlyList<string> Packages);

    /// <summary>A page of families.</summary>
    /// <param name="search">Part of a number; blanks, dashes and case do not matter. Null for all.</param>
    /// <param name="after">The mark of the last row seen, or null.</param>
    /// <param name="limit">Rows a page, 1 to 200.</param>
    /// <param name="seesDrafts">True for people and tokens that may see drafts.</param>
    /// <param name="cancellationToken">Cancels the query.</param>
    public Task<Page<Row>> RunAsync(string? search, string? after, int limit, bool seesDrafts, CancellationToken cancellationToken = default) =>
        RunAsync(search, after, limit, seesDrafts, isLacking: false, cancellationToken);

    /// <summary>A page of families, or only of those without a function class or a package.</summary>
    /// <param name="search">Part of a number, or null for all.</param>
    /// <param name="after">The mark of the last row seen, or null.</param>
    /// <param name="limit">Rows a page, 1 to 200.</param>
    /// <param name="seesDrafts">True for people and tokens that may see drafts.</param>
    /// <param name="isLacking">True for those of which the function class or the packages are not recorded.</param>
    /// <param name="cancellationToken">Cancels the query.</param>
    public async Task<Page<Row>> RunAsync(string? search, string? after, int limit, bool seesDrafts, bool isLacking, CancellationToken cancellationToken = default)
    {
        limit = Math.Clamp(limit, 1, 200);
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        var published = context.Revisions.Where(row => row.State == RevisionState.Published);
        var families = context.Families.Where(row => row.MergedIntoId == null);
        if (!seesDrafts)
            families = families.Where(row => context.FamilyLinks.Any(link => link.FamilyId == row.Id && published.Any(revision => revision.Id == link.RevisionId)));
        if (isLacking)
            families = families.Where(row => row.FunctionClass == null || row.Packages.Length == 0);
        if (PartNumber.From(search)?.SearchKey is { Length: > 0 } key)
        {
            var pattern = key.Length < 3 ? key + "%" : "%" + key + "%";
            families = families.Where(row => EF.Functions.Like(row.SearchKey, pattern));
        }
        else if (!string.IsNullOrWhiteSpace(search))
        {
            return new Page<Row>([], null);
        }

        if (PageMark.TryParse(after) is { } mark)
        {
            var last = FamilyId.From(mark.Id);
            families = families.Where(row => EF.Functions.GreaterThan(ValueTuple.Create(row.Name, row.Id), ValueTuple.Create(mark.Key, last)));
        }

        var rows = await families
            .OrderBy(row => row.Name)
            .ThenBy(row => row.Id)
            .Take(limit + 1)
            .Select(row => new
            {
                row.Id,
                row.Slug,
                row.Name,
                row.FunctionClass,
                row.Packages,
                Designs = context.FamilyLinks.Where(link => link.FamilyId == row.Id && published.Any(revision => revision.Id == link.RevisionId)).Select(link => link.RevisionId).Distinct().Count(),
            })
            .ToListAsync(cancellationToken);
        var page = rows.Take(limit).ToList();
        return new Page<Row>(
            [.. page.Select(row => new Row(row.Slug, row.Name, row.FunctionClass, row.Designs, row.Packages))],
            rows.Count > limit ? new PageMark(page[^1].Name, page[^1].Id.Value).ToString() : null);
    }
}
