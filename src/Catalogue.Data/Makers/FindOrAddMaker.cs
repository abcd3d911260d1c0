using Catalogue.Domain.Makers;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Makers;

/// <summary>Finds a maker by its name or an alias, or adds it to the context. The caller holds the lock of what is being created.</summary>
internal static class FindOrAddMaker
{
    public static async Task<Maker> RunAsync(CatalogueContext context, string name, CancellationToken cancellationToken)
    {
        var key = MakerName.Key(name);
        if (await context.Makers.SingleOrDefaultAsync(row => row.NameKey == key, cancellationToken) is { } known)
            return known;
        if (await context.Makers.SingleOrDefaultAsync(row => context.MakerAliases.Any(alias => alias.NameKey == key && alias.MakerId == row.Id), cancellationToken) is { } renamed)
            return renamed;
        var stem = Slug.From(name, "maker");
        var pattern = stem + "-%";
        var taken = await context.Makers.Where(row => row.Slug == stem || EF.Functions.Like(row.Slug, pattern)).Select(row => row.Slug).ToListAsync(cancellationToken);
        var attempt = 1;
        while (taken.Contains(Slug.Numbered(stem, attempt)))
            attempt++;
        var maker = new Maker { Id = MakerId.New(), Name = name, NameKey = key, Slug = Slug.Numbered(stem, attempt) };
        context.Makers.Add(maker);
        return maker;
    }
}
