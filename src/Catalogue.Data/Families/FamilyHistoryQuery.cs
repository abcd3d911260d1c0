using Catalogue.Domain.Families;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Families;

/// <summary>Reads what was said of a family and others, and the merges and splits it took part in.</summary>
/// <param name="contexts">Makes the context of each query.</param>
public sealed class FamilyHistoryQuery(IDbContextFactory<CatalogueContext> contexts)
{
    /// <summary>What was said and done.</summary>
    /// <param name="Version">The version of the family's facts.</param>
    /// <param name="Note">What a reviewer should know about it; null for readers.</param>
    /// <param name="Relations">What was said of it and others, by the others' addresses.</param>
    /// <param name="Merges">Merges, newest first.</param>
    /// <param name="Splits">Splits, newest first.</param>
    public sealed record History(uint Version, string? Note, IReadOnlyList<Relation> Relations, IReadOnlyList<Step> Merges, IReadOnlyList<Step> Splits);

    /// <summary>What was said of two families.</summary>
    /// <param name="Family">The other one's address.</param>
    /// <param name="Kind">The word.</param>
    /// <param name="Note">Why, or null.</param>
    public sealed record Relation(string Family, FamilyRelationKind Kind, string? Note);

    /// <summary>A merge or a split.</summary>
    /// <param name="Id">Its id; it is undone by it.</param>
    /// <param name="From">The address of the family that went, or that parts were taken from.</param>
    /// <param name="Into">The address of the family that it or they went to.</param>
    /// <param name="Parts">How many component rows a split moved; null for a merge.</param>
    /// <param name="At">When.</param>
    /// <param name="Who">Who did it; null for readers.</param>
    /// <param name="Note">Why; null for readers.</param>
    /// <param name="UndoneAt">When it was undone, or null.</param>
    public sealed record Step(Guid Id, string From, string Into, int? Parts, DateTimeOffset At, string? Who, string? Note, DateTimeOffset? UndoneAt);

    /// <summary>Reads them. Whether the asker may see the family at all was asked before (<see cref="FamilyQuery"/>).</summary>
    /// <param name="slug">The family's address.</param>
    /// <param name="seesDrafts">True for people and tokens that may see drafts; others learn of no family that only drafts mention.</param>
    /// <param name="cancellationToken">Cancels the query.</param>
    /// <returns>Null where there is no such family.</returns>
    public async Task<History?> RunAsync(string slug, bool seesDrafts, CancellationToken cancellationToken = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        context.ChangeTracker.QueryTrackingBehavior = QueryTrackingBehavior.NoTracking;
        if (await context.Families.SingleOrDefaultAsync(row => row.Slug == slug, cancellationToken) is not { } family)
            return null;
        var relations = await context.FamilyRelations.Where(row => row.OneId == family.Id || row.OtherId == family.Id).ToListAsync(cancellationToken);
        var merges = await context.FamilyMerges.Where(row => row.FromId == family.Id || row.IntoId == family.Id).OrderByDescending(row => row.At).ThenByDescending(row => row.Id).ToListAsync(cancellationToken);
        var splits = await context.FamilySplits.Where(row => row.FromId == family.Id || row.ToId == family.Id).OrderByDescending(row => row.At).ThenByDescending(row => row.Id).ToListAsync(cancellationToken);
        var named = relations.SelectMany(row => new[] { row.OneId, row.OtherId })
            .Concat(merges.SelectMany(row => new[] { row.FromId, row.IntoId }))
            .Concat(splits.SelectMany(row => new[] { row.FromId, row.ToId }))
            .Distinct()
            .ToList();
        // A family that was merged is looked for by its own links: readers knew it by them.
        var seen = context.Families.Where(row => named.Contains(row.Id));
        if (!seesDrafts)
            seen = seen.Where(row => row.Id == family.Id || context.FamilyLinks.Any(link => link.LinkedFamilyId == row.Id && context.Revisions.Any(revision => revision.Id == link.RevisionId && revision.State == RevisionState.Published)));
        var slugs = await seen.ToDictionaryAsync(row => row.Id, row => row.Slug, cancellationToken);
        var ids = splits.ConvertAll(row => row.Id);
        var parts = await context.FamilySplitParts
            .Where(row => ids.Contains(row.SplitId) && (seesDrafts || context.Revisions.Any(revision => revision.Id == row.RevisionId && revision.State == RevisionState.Published)))
            .GroupBy(row => row.SplitId)
            .ToDictionaryAsync(group => group.Key, group => group.Count(), cancellationToken);
        return new History(
            family.Version,
            seesDrafts ? family.Note : null,
            [
                .. relations
                    .Select(row => (Other: row.OneId == family.Id ? row.OtherId : row.OneId, Row: row))
                    .Where(said => slugs.ContainsKey(said.Other))
                    .Select(said => new Relation(slugs[said.Other], said.Row.Kind, said.Row.Note))
                    .OrderBy(said => said.Family, StringComparer.Ordinal),
            ],
            [
                .. merges
                    .Where(row => slugs.ContainsKey(row.FromId) && slugs.ContainsKey(row.IntoId))
                    .Select(row => new Step(row.Id.Value, slugs[row.FromId], slugs[row.IntoId], null, row.At, seesDrafts ? row.Who : null, seesDrafts ? row.Note : null, row.UndoneAt)),
            ],
            [
                .. splits
                    .Where(row => slugs.ContainsKey(row.FromId) && slugs.ContainsKey(row.ToId))
                    .Select(row => new Step(
                        row.Id.Value, slugs[row.FromId], slugs[row.ToId], parts.GetValueOrDefault(row.Id), row.At, seesDrafts ? row.Who : null, seesDrafts ? row.Note : null, row.UndoneAt)),
            ]);
    }
}
