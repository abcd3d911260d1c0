using Catalogue.Domain.Families;
using Catalogue.Domain.Identification;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Families;

/// <summary>Reads what was recorded of a family itself, beside the parts that count to it: its names, codes, makers, packages and typical ratings.</summary>
/// <param name="contexts">Makes the context of each query.</param>
public sealed class FamilyKnowledgeQuery(IDbContextFactory<CatalogueContext> contexts)
{
    /// <summary>Most entries of each list.</summary>
    public const int MaxInList = 200;

    /// <summary>What was recorded of a family.</summary>
    /// <param name="Numbers">Its other numbers, those of families merged into it among them; in the order of their text.</param>
    /// <param name="Codes">The codes printed on it.</param>
    /// <param name="Makers">The makers known for it, by name.</param>
    /// <param name="Packages">The packages it comes in, as recorded with it.</param>
    /// <param name="Ratings">Its typical ratings, by kind.</param>
    public sealed record Knowledge(IReadOnlyList<Number> Numbers, IReadOnlyList<Code> Codes, IReadOnlyList<KnownMaker> Makers, IReadOnlyList<string> Packages, IReadOnlyList<FamilyRating> Ratings);

    /// <summary>Another number.</summary>
    /// <param name="Text">The number.</param>
    /// <param name="Kind">What kind of name it is.</param>
    public sealed record Number(string Text, FamilyNameKind Kind);

    /// <summary>A code printed where the number has no room.</summary>
    /// <param name="Id">Its id.</param>
    /// <param name="Text">The code.</param>
    /// <param name="Maker">Whose it is, or null where not known.</param>
    /// <param name="Package">The package it stands on, or null.</param>
    /// <param name="Source">Where it was found, or null.</param>
    /// <param name="Sharers">Other families with the same code, as far as the asker may see them.</param>
    public sealed record Code(TopMarkId Id, string Text, string? Maker, string? Package, string? Source, IReadOnlyList<Sharer> Sharers);

    /// <summary>Another family that shares a code.</summary>
    /// <param name="Slug">Its address.</param>
    /// <param name="Name">Its base number.</param>
    /// <param name="Maker">Whose code it is there, or null where not known.</param>
    public sealed record Sharer(string Slug, string Name, string? Maker);

    /// <summary>A maker known for the family; it has a page wherever the family has one.</summary>
    /// <param name="Slug">Its address.</param>
    /// <param name="Name">Its name.</param>
    public sealed record KnownMaker(string Slug, string Name);

    /// <summary>Reads what was recorded. Whether the asker may see the family at all was asked before (<see cref="FamilyQuery"/>).</summary>
    /// <param name="slug">The family's address; a merged one's leads to nothing here.</param>
    /// <param name="seesDrafts">True for people and tokens that may see drafts.</param>
    /// <param name="cancellationToken">Cancels the query.</param>
    /// <returns>Null where there is no such family.</returns>
    public async Task<Knowledge?> RunAsync(string slug, bool seesDrafts, CancellationToken cancellationToken = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        context.ChangeTracker.QueryTrackingBehavior = QueryTrackingBehavior.NoTracking;
        if (await context.Families.SingleOrDefaultAsync(row => row.Slug == slug && row.MergedIntoId == null, cancellationToken) is not { } family)
            return null;
        var members = await context.Families.MembersOf(family.Id).Select(row => new { row.Id, row.Name }).ToListAsync(cancellationToken);
        var ids = members.Select(row => row.Id).ToList();
        var aliases = await context.FamilyAliases.Where(row => ids.Contains(row.FamilyId)).OrderBy(row => row.MatchKey).Take(MaxInList).Select(row => new Number(row.Name, row.Kind)).ToListAsync(cancellationToken);
        var makers = await context.FamilyMakers.Where(row => ids.Contains(row.FamilyId))
            .Join(context.Makers, row => row.MakerId, maker => maker.Id, (_, maker) => new { maker.Slug, maker.Name })
            .Distinct().OrderBy(maker => maker.Name).ThenBy(maker => maker.Slug).Take(MaxInList).ToListAsync(cancellationToken);
        var ratings = await context.FamilyRatings.Where(row => ids.Contains(row.FamilyId)).OrderBy(row => row.Id).Take(MaxInList).ToListAsync(cancellationToken);
        return new Knowledge(
            [.. aliases.Concat(members.Where(row => row.Id != family.Id).Select(row => new Number(row.Name, FamilyNameKind.OtherNumber))).DistinctBy(number => number.Text).OrderBy(number => number.Text, StringComparer.Ordinal)],
            await CodesAsync(context, ids, seesDrafts, cancellationToken),
            [.. makers.Select(maker => new KnownMaker(maker.Slug, maker.Name))],
            family.Packages,
            [.. ratings.OrderBy(rating => rating.Kind).ThenBy(rating => rating.Condition, StringComparer.Ordinal)]);
    }

    private static async Task<IReadOnlyList<Code>> CodesAsync(CatalogueContext context, List<FamilyId> ids, bool seesDrafts, CancellationToken cancellationToken)
    {
        var marks = context.Set<TopMark>();
        var own = await Marks(context, marks.Where(row => ids.Contains(row.FamilyId))).Take(MaxInList).ToListAsync(cancellationToken);
        // The keys find them by their index; the letters decide.
        var letters = own.Select(row => MarkingKeys.Letters(row.Code.ToUpperInvariant())).Where(code => code.Length > 0).Distinct().ToArray();
        var keys = letters.Select(MarkingKeys.Skeleton).Distinct().ToArray();
        var shared = marks.Where(row => !ids.Contains(row.FamilyId) && EF.Property<string[]>(row, "MarkingKeys").Any(key => keys.Contains(key)) && letters.Contains(EF.Property<string>(row, "Letters")));
        var others = (await Marks(context, shared).Take(MaxInList).ToListAsync(cancellationToken)).ToLookup(row => MarkingKeys.Letters(row.Code.ToUpperInvariant()), StringComparer.Ordinal);
        var visible = seesDrafts ? null : await VisibleAsync(context, [.. others.SelectMany(group => group).Select(row => row.FamilyId).Distinct()], cancellationToken);
        return
        [
            .. own.Select(row => new Code(
                row.Id,
                row.Code,
                row.Maker,
                row.Package,
                row.Source,
                [.. others[MarkingKeys.Letters(row.Code.ToUpperInvariant())].Where(other => visible?.Contains(other.FamilyId) != false).Select(other => new Sharer(other.Slug, other.Name, other.Maker)).Distinct()])),
        ];
    }

    private static async Task<HashSet<FamilyId>> VisibleAsync(CatalogueContext context, List<FamilyId> families, CancellationToken cancellationToken) =>
        [
            .. await context.FamilyLinks
                .Where(row => families.Contains(row.FamilyId) && context.Revisions.Any(revision => revision.Id == row.RevisionId && revision.State == RevisionState.Published))
                .Select(row => row.FamilyId).Distinct().ToListAsync(cancellationToken),
        ];

    private static IQueryable<Mark> Marks(CatalogueContext context, IQueryable<TopMark> marks) =>
        from mark in marks
        join linked in context.Families on mark.FamilyId equals linked.Id
        join family in context.Families on linked.MergedIntoId ?? linked.Id equals family.Id
        join maker in context.Makers on mark.MakerId equals maker.Id into makers
        from maker in makers.DefaultIfEmpty()
        orderby mark.Code, mark.Id
        select new Mark { Id = mark.Id, Code = mark.Code, FamilyId = family.Id, Slug = family.Slug, Name = family.Name, Maker = maker == null ? null : maker.Name, Package = mark.Package, Source = mark.Source };

    private sealed class Mark
    {
        public TopMarkId Id { get; init; }

        public required string Code { get; init; }

        public FamilyId FamilyId { get; init; }

        public required string Slug { get; init; }

        public required string Name { get; init; }

        public string? Maker { get; init; }

        public string? Package { get; init; }

        public string? Source { get; init; }
    }
}
