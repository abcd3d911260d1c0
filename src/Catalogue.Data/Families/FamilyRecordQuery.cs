using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
using Catalogue.Domain.Makers;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Families;

/// <summary>Reads everything that is known of one part family itself: facts, names, makers, ratings, relations, history, and which pages rest on it.</summary>
/// <param name="contexts">Makes the context of each query.</param>
public sealed class FamilyRecordQuery(IDbContextFactory<CatalogueContext> contexts)
{
    /// <summary>The most components that are listed as resting on a family.</summary>
    public const int MaxUses = 500;

    /// <summary>A family as it stands.</summary>
    public sealed record Record
    {
        /// <summary>The family.</summary>
        public required PartFamily Family { get; init; }

        /// <summary>The address of the family it was merged into, or null.</summary>
        public required string? MergedInto { get; init; }

        /// <summary>Families that were merged into it, by name.</summary>
        public required IReadOnlyList<Other> Absorbed { get; init; }

        /// <summary>Its other numbers, and those of families merged into it, by name.</summary>
        public required IReadOnlyList<FamilyAlias> Aliases { get; init; }

        /// <summary>Its top marks by code.</summary>
        public required IReadOnlyList<Mark> TopMarks { get; init; }

        /// <summary>Its makers by name.</summary>
        public required IReadOnlyList<Maker> Makers { get; init; }

        /// <summary>Its typical ratings by kind.</summary>
        public required IReadOnlyList<FamilyRating> Ratings { get; init; }

        /// <summary>What was said of it and other families, by their names.</summary>
        public required IReadOnlyList<Relation> Relations { get; init; }

        /// <summary>Merges that it took part in, newest first.</summary>
        public required IReadOnlyList<Merge> Merges { get; init; }

        /// <summary>Splits that it took part in, newest first.</summary>
        public required IReadOnlyList<Split> Splits { get; init; }

        /// <summary>The components that count to it now, published ones first, at most <see cref="MaxUses"/>.</summary>
        public required IReadOnlyList<Use> Uses { get; init; }
    }

    /// <summary>Another family.</summary>
    /// <param name="Slug">Its address.</param>
    /// <param name="Name">Its base number.</param>
    public sealed record Other(string Slug, string Name);

    /// <summary>A top mark.</summary>
    /// <param name="TopMark">The mark.</param>
    /// <param name="Maker">Whose it is, or null.</param>
    /// <param name="SharedBy">How many other families have the same code.</param>
    public sealed record Mark(TopMark TopMark, string? Maker, int SharedBy);

    /// <summary>What was said of two families.</summary>
    /// <param name="Family">The other one.</param>
    /// <param name="Said">The word.</param>
    public sealed record Relation(Other Family, FamilyRelation Said);

    /// <summary>A merge.</summary>
    /// <param name="From">The family that went.</param>
    /// <param name="Into">Where it went.</param>
    /// <param name="Row">The rest.</param>
    public sealed record Merge(Other From, Other Into, FamilyMerge Row);

    /// <summary>A split.</summary>
    /// <param name="From">The family that parts were taken from.</param>
    /// <param name="To">Where they went.</param>
    /// <param name="Row">The rest.</param>
    /// <param name="Parts">How many component rows went.</param>
    public sealed record Split(Other From, Other To, FamilySplit Row, int Parts);

    /// <summary>A component that counts to the family.</summary>
    /// <param name="Teardown">The teardown's address.</param>
    /// <param name="Product">Brand and name.</param>
    /// <param name="Number">The revision's number.</param>
    /// <param name="State">Where the revision stands; superseded and withdrawn ones are not listed.</param>
    /// <param name="Board">The board's name.</param>
    /// <param name="Component">The component.</param>
    /// <param name="Ratings">Its ratings.</param>
    public sealed record Use(string Teardown, string Product, int Number, RevisionState State, string Board, BoardComponent Component, IReadOnlyList<Rating> Ratings);

    /// <summary>Reads one, merged or not; null where there is none. For people and tokens that may see drafts.</summary>
    public async Task<Record?> RunAsync(string slug, CancellationToken cancellationToken = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        context.ChangeTracker.QueryTrackingBehavior = QueryTrackingBehavior.NoTracking;
        if (await context.Families.SingleOrDefaultAsync(row => row.Slug == slug, cancellationToken) is not { } family)
            return null;
        var members = await context.Families.MembersOf(family.Id).OrderBy(row => row.Name).ToListAsync(cancellationToken);
        var ids = members.ConvertAll(row => row.Id);
        var merges = await context.FamilyMerges.Where(row => row.FromId == family.Id || row.IntoId == family.Id).OrderByDescending(row => row.At).ToListAsync(cancellationToken);
        var splits = await context.FamilySplits.Where(row => row.FromId == family.Id || row.ToId == family.Id).OrderByDescending(row => row.At).ToListAsync(cancellationToken);
        var relations = await context.FamilyRelations.Where(row => row.OneId == family.Id || row.OtherId == family.Id).ToListAsync(cancellationToken);
        var named = merges.SelectMany(row => new[] { row.FromId, row.IntoId })
            .Concat(splits.SelectMany(row => new[] { row.FromId, row.ToId }))
            .Concat(relations.SelectMany(row => new[] { row.OneId, row.OtherId }))
            .Append(family.MergedIntoId ?? family.Id)
            .Distinct()
            .ToList();
        var others = await context.Families.Where(row => named.Contains(row.Id)).ToDictionaryAsync(row => row.Id, row => new Other(row.Slug, row.Name), cancellationToken);
        var counts = await context.FamilySplitParts.Where(row => splits.Select(split => split.Id).Contains(row.SplitId)).GroupBy(row => row.SplitId).ToDictionaryAsync(group => group.Key, group => group.Count(), cancellationToken);
        var marks = await context.TopMarks
            .Where(row => ids.Contains(row.FamilyId))
            .OrderBy(row => row.Code)
            .Select(row => new Mark(
                row,
                row.MakerId == null ? null : context.Makers.Single(maker => maker.Id == row.MakerId).Name,
                context.TopMarks.Where(other => other.Code == row.Code && other.FamilyId != row.FamilyId).Select(other => other.FamilyId).Distinct().Count()))
            .ToListAsync(cancellationToken);
        return new Record
        {
            Family = family,
            MergedInto = family.MergedIntoId is { } into ? others[into].Slug : null,
            Absorbed = [.. members.Where(row => row.Id != family.Id).Select(row => new Other(row.Slug, row.Name))],
            Aliases = await context.FamilyAliases.Where(row => ids.Contains(row.FamilyId)).OrderBy(row => row.Name).ToListAsync(cancellationToken),
            TopMarks = marks,
            Makers = await context.FamilyMakers.Where(row => ids.Contains(row.FamilyId)).Join(context.Makers, row => row.MakerId, row => row.Id, (_, maker) => maker).Distinct().OrderBy(row => row.Name).ToListAsync(cancellationToken),
            Ratings = await context.FamilyRatings.Where(row => ids.Contains(row.FamilyId)).OrderBy(row => row.Kind).ThenBy(row => row.Id).ToListAsync(cancellationToken),
            Relations = [.. relations.Select(row => new Relation(others[row.OneId == family.Id ? row.OtherId : row.OneId], row)).OrderBy(row => row.Family.Name, StringComparer.Ordinal)],
            Merges = merges.ConvertAll(row => new Merge(others[row.FromId], others[row.IntoId], row)),
            Splits = splits.ConvertAll(row => new Split(others[row.FromId], others[row.ToId], row, counts.GetValueOrDefault(row.Id))),
            Uses = await UsesAsync(context, ids, cancellationToken),
        };
    }

    private static async Task<IReadOnlyList<Use>> UsesAsync(CatalogueContext context, List<FamilyId> members, CancellationToken cancellationToken)
    {
        var uses = await context.FamilyLinks
            .Where(row => members.Contains(row.LinkedFamilyId))
            .Join(context.Components, row => new { row.RevisionId, Id = row.ComponentId }, row => new { row.RevisionId, row.Id }, (_, component) => component)
            .Join(context.Revisions.Where(row => row.State == RevisionState.Published || row.State == RevisionState.Draft || row.State == RevisionState.InReview), row => row.RevisionId, row => row.Id, (component, revision) => new { Component = component, Revision = revision })
            .Join(context.Teardowns, row => row.Revision.TeardownId, row => row.Id, (row, teardown) => new { row.Component, row.Revision, teardown.Slug })
            .Join(context.Boards, row => new { row.Component.RevisionId, row.Component.BoardId }, row => new { row.RevisionId, BoardId = row.Id }, (row, board) => new { row.Component, row.Revision, row.Slug, Board = board.Name })
            .OrderBy(row => row.Revision.State == RevisionState.Published ? 0 : 1)
            .ThenBy(row => row.Slug)
            .ThenBy(row => row.Component.Position)
            .ThenBy(row => row.Component.Id)
            .Take(MaxUses)
            .Select(row => new { row.Slug, Product = row.Revision.Brand + " " + row.Revision.ProductName, row.Revision.Number, row.Revision.State, row.Board, row.Component })
            .ToListAsync(cancellationToken);
        var revisions = uses.Select(use => use.Component.RevisionId).Distinct().ToList();
        var components = uses.Select(use => use.Component.Id).Distinct().ToList();
        var ratings = (await context.Ratings.Where(row => revisions.Contains(row.RevisionId) && components.Contains(row.ComponentId)).OrderBy(row => row.Id).ToListAsync(cancellationToken))
            .ToLookup(row => (row.RevisionId, row.ComponentId));
        return uses.ConvertAll(use => new Use(use.Slug, use.Product, use.Number, use.State, use.Board, use.Component, [.. ratings[(use.Component.RevisionId, use.Component.Id)]]));
    }
}
