using Catalogue.Domain.Components;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Teardowns;

/// <summary>Finds components of published teardowns by what was read on them, whether or not a family is known.</summary>
/// <param name="contexts">Makes the context of the query.</param>
public sealed class MarkingsQuery(IDbContextFactory<CatalogueContext> contexts)
{
    /// <summary>The most rows of an answer.</summary>
    public const int MaxLimit = 100;

    /// <summary>A component that was found.</summary>
    /// <param name="Teardown">The teardown's address.</param>
    /// <param name="Title">The teardown's title.</param>
    /// <param name="Component">The component's id.</param>
    /// <param name="Name">Its designators, else its role, or null.</param>
    /// <param name="MarkingAsRead">The marking, or null.</param>
    /// <param name="PartNumber">The part number as given, or null.</param>
    /// <param name="MakerAsRead">The maker as read, or null.</param>
    public sealed record Row(string Teardown, string Title, ComponentId Component, string? Name, string? MarkingAsRead, string? PartNumber, string? MakerAsRead);

    /// <summary>Components whose marking, part number or maker as read holds every word, in any case; the latest publication first.</summary>
    /// <param name="search">The words; without any, nothing is found.</param>
    /// <param name="limit">Rows, 1 to <see cref="MaxLimit"/>.</param>
    /// <param name="cancellationToken">Cancels the query.</param>
    public async Task<IReadOnlyList<Row>> RunAsync(string? search, int limit, CancellationToken cancellationToken = default)
    {
        var words = TeardownsQuery.Words(search).ToList();
        if (words.Count == 0)
            return [];
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        IQueryable<BoardComponent> components = context.Components;
        foreach (var word in words)
        {
            var pattern = $"%{TeardownsQuery.Escape(word)}%";
            components = components.Where(row => EF.Functions.ILike((row.MarkingAsRead ?? "") + " " + (row.PartNumber ?? "") + " " + (row.MakerAsRead ?? ""), pattern));
        }

        return await components
            .Join(context.Revisions.Where(row => row.State == RevisionState.Published), row => row.RevisionId, row => row.Id, (component, revision) => new { Component = component, Revision = revision })
            .Join(context.Teardowns, row => row.Revision.TeardownId, row => row.Id, (row, teardown) => new { row.Component, row.Revision, teardown.Slug })
            .OrderByDescending(row => row.Revision.PublishedAt)
            .ThenBy(row => row.Component.Position)
            .ThenBy(row => row.Component.Id)
            .Take(Math.Clamp(limit, 1, MaxLimit))
            .Select(row => new Row(row.Slug, row.Revision.Title, row.Component.Id, row.Component.Designators ?? row.Component.Role, row.Component.MarkingAsRead, row.Component.PartNumber, row.Component.MakerAsRead))
            .ToListAsync(cancellationToken);
    }
}
