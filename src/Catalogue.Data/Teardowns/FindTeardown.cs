using System.Linq.Expressions;
using Catalogue.Domain;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Teardowns;

/// <summary>Finds the teardown that a slug or a record belongs to.</summary>
internal static class FindTeardown
{
    /// <summary>The teardown at an address, or null.</summary>
    public static async Task<TeardownId?> BySlugAsync(CatalogueContext context, string slug, CancellationToken cancellationToken)
    {
        var found = await context.Teardowns.AsNoTracking().Where(row => row.Slug == slug).Select(row => row.Id).ToListAsync(cancellationToken);
        return found.Count > 0 ? found[0] : null;
    }

    /// <summary>The teardown of a record of any of its revisions, or null.</summary>
    public static async Task<TeardownId?> OfAsync<TRecord, TId>(IDbContextFactory<CatalogueContext> contexts, TId id, CancellationToken cancellationToken)
        where TRecord : class, IRevisionContent
        where TId : struct, ITypedId<TId>
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        var found = await context.Set<TRecord>().AsNoTracking()
            .Where(HasId<TRecord, TId>(id))
            .Join(context.Revisions, row => row.RevisionId, revision => revision.Id, (_, revision) => revision.TeardownId)
            .OrderBy(teardown => teardown)
            .Take(1)
            .ToListAsync(cancellationToken);
        return found.Count > 0 ? found[0] : null;
    }

    /// <summary>A condition on the id alone, whatever the record.</summary>
    public static Expression<Func<TRecord, bool>> HasId<TRecord, TId>(TId id)
        where TRecord : class
        where TId : struct, ITypedId<TId> => row => EF.Property<TId>(row, "Id").Equals(id);
}
