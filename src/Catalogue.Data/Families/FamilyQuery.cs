using Catalogue.Domain.Components;
using Catalogue.Domain.Products;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Families;

/// <summary>Reads one part family with the published designs that use it.</summary>
/// <param name="contexts">Makes the context of each query.</param>
public sealed class FamilyQuery(IDbContextFactory<CatalogueContext> contexts)
{
    /// <summary>What came of it.</summary>
    public abstract record Answer
    {
        private Answer()
        {
        }

        /// <summary>The family.</summary>
        public sealed record Found(Record Family) : Answer;

        /// <summary>It was merged into another one.</summary>
        /// <param name="Slug">The other one's address.</param>
        public sealed record Moved(string Slug) : Answer;

        /// <summary>There is none that the reader may see.</summary>
        public sealed record Nothing : Answer;
    }

    /// <summary>A family.</summary>
    /// <param name="Slug">Its address.</param>
    /// <param name="Name">The base number as first written.</param>
    /// <param name="FunctionClass">Its function class, or null.</param>
    /// <param name="DatasheetUrl">The datasheet's address, or null.</param>
    /// <param name="Uses">Where it is used, the latest publication first.</param>
    public sealed record Record(string Slug, string Name, FunctionClass? FunctionClass, string? DatasheetUrl, IReadOnlyList<Use> Uses);

    /// <summary>One component of a published teardown that is of the family.</summary>
    /// <param name="Teardown">The teardown's address.</param>
    /// <param name="Brand">The brand.</param>
    /// <param name="ProductName">The product's name.</param>
    /// <param name="Category">The category.</param>
    /// <param name="PublishedAt">When the revision was published.</param>
    /// <param name="Component">The component's id.</param>
    /// <param name="BoardPosition">The board's place, from 0.</param>
    /// <param name="BoardName">The board's name.</param>
    /// <param name="Role">What the component does, or null.</param>
    /// <param name="Designators">Its designators, or null.</param>
    /// <param name="MarkingAsRead">The marking, or null.</param>
    /// <param name="PartNumber">The part number as given, or null.</param>
    /// <param name="MakerAsRead">The maker as read, or null.</param>
    /// <param name="Package">The package, or null.</param>
    /// <param name="Quantity">How many, or null.</param>
    /// <param name="Evidence">How the family is known, or null.</param>
    /// <param name="Ratings">Its ratings as that teardown gives them.</param>
    public sealed record Use(
        string Teardown,
        string Brand,
        string ProductName,
        ProductCategory Category,
        DateTimeOffset? PublishedAt,
        ComponentId Component,
        int BoardPosition,
        string BoardName,
        string? Role,
        string? Designators,
        string? MarkingAsRead,
        string? PartNumber,
        string? MakerAsRead,
        string? Package,
        int? Quantity,
        Evidence? Evidence,
        IReadOnlyList<Rating> Ratings);

    /// <summary>Reads one.</summary>
    /// <param name="slug">Its address.</param>
    /// <param name="seesDrafts">True for people and tokens that may see families which only drafts mention; the uses are published ones all the same.</param>
    /// <param name="cancellationToken">Cancels the query.</param>
    public async Task<Answer> RunAsync(string slug, bool seesDrafts, CancellationToken cancellationToken = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        context.ChangeTracker.QueryTrackingBehavior = QueryTrackingBehavior.NoTracking;
        if (await context.Families.SingleOrDefaultAsync(row => row.Slug == slug, cancellationToken) is not { } family)
            return new Answer.Nothing();
        var target = family.MergedIntoId is { } into ? await context.Families.SingleAsync(row => row.Id == into, cancellationToken) : family;
        // Only ids that are known when the plan is made lead into both halves of the view.
        var members = await context.Families.MembersOf(target.Id).Select(row => row.Id).ToListAsync(cancellationToken);
        var uses = await context.FamilyLinks
            .Where(row => members.Contains(row.LinkedFamilyId))
            .Join(context.Components, row => new { row.RevisionId, Id = row.ComponentId }, row => new { row.RevisionId, row.Id }, (_, component) => component)
            .Join(context.Revisions.Where(row => row.State == RevisionState.Published), row => row.RevisionId, row => row.Id, (component, revision) => new { Component = component, Revision = revision })
            .Join(context.Teardowns, row => row.Revision.TeardownId, row => row.Id, (row, teardown) => new { row.Component, row.Revision, teardown.Slug })
            .Join(context.Boards, row => new { row.Component.RevisionId, row.Component.BoardId }, row => new { row.RevisionId, BoardId = row.Id }, (row, board) => new { row.Component, row.Revision, row.Slug, Board = board })
            .OrderByDescending(row => row.Revision.PublishedAt)
            .ThenBy(row => row.Board.Position)
            .ThenBy(row => row.Component.Position)
            .ThenBy(row => row.Component.Id)
            .Take(500)
            .ToListAsync(cancellationToken);
        if (uses.Count == 0 && !seesDrafts)
            return new Answer.Nothing();
        if (target.Id != family.Id)
            return new Answer.Moved(target.Slug);

        var components = uses.Select(row => row.Component.Id).ToList();
        var revisions = uses.Select(row => row.Revision.Id).Distinct().ToList();
        var ratings = (await context.Ratings.Where(row => revisions.Contains(row.RevisionId) && components.Contains(row.ComponentId)).OrderBy(row => row.Id).ToListAsync(cancellationToken))
            .ToLookup(row => (row.RevisionId, row.ComponentId));
        return new Answer.Found(new Record(
            target.Slug,
            target.Name,
            target.FunctionClass,
            target.DatasheetUrl,
            [.. uses.Select(row => new Use(
                row.Slug,
                row.Revision.Brand,
                row.Revision.ProductName,
                row.Revision.Category,
                row.Revision.PublishedAt,
                row.Component.Id,
                row.Board.Position,
                row.Board.Name,
                row.Component.Role,
                row.Component.Designators,
                row.Component.MarkingAsRead,
                row.Component.PartNumber,
                row.Component.MakerAsRead,
                row.Component.Package,
                row.Component.Quantity,
                row.Component.FamilyEvidence,
                [.. ratings[(row.Revision.Id, row.Component.Id)]]))]));
    }
}
