using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
using Catalogue.Domain.Identification;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Families;

/// <summary>Reads the ratings that a part may take over from its family.</summary>
internal static class KnownRatings
{
    // Far more than any family says; a family seen in thousands of designs is read from a part of them.
    private const int MaxRows = 5000;
    private const int MaxSource = 400;

    /// <summary>The ratings of each family, as <see cref="KnownRating.Choose"/> has them; families without any are missing.</summary>
    /// <param name="context">The context.</param>
    /// <param name="families">The families, after merges.</param>
    /// <param name="except">The part in hand, whose own published ratings are no news.</param>
    /// <param name="cancellationToken">Cancels the query.</param>
    public static async Task<IReadOnlyDictionary<FamilyId, IReadOnlyList<KnownRating>>> OfAsync(
        CatalogueContext context, IReadOnlyCollection<FamilyId> families, ComponentId except, CancellationToken cancellationToken)
    {
        var ids = families.ToList();
        if (ids.Count == 0)
            return new Dictionary<FamilyId, IReadOnlyList<KnownRating>>();
        var members = await context.Families.AsNoTracking()
            .MembersOf(ids)
            .Select(row => new { row.Id, Family = row.MergedIntoId ?? row.Id, row.Name })
            .ToListAsync(cancellationToken);
        var (home, names, linked) = (members.ToDictionary(row => row.Id, row => row.Family), members.ToDictionary(row => row.Id, row => row.Name), members.ConvertAll(row => row.Id));
        var typical = (await context.FamilyRatings.AsNoTracking().Where(row => linked.Contains(row.FamilyId)).OrderBy(row => row.Id).Take(MaxRows).ToListAsync(cancellationToken))
            .ToLookup(row => home[row.FamilyId], row => new KnownRating(row.Kind, Interval.Create(row.Low, row.Nominal, row.High), row.Condition, row.Evidence, Said($"typical of family {names[row.FamilyId]}", row.Source)));
        var rows = await context.FamilyLinks.AsNoTracking()
            .Where(link => linked.Contains(link.LinkedFamilyId) && link.ComponentId != except)
            .Join(context.Revisions.Where(row => row.State == RevisionState.Published), link => link.RevisionId, row => row.Id, (link, revision) => new { link.FamilyId, link.RevisionId, link.ComponentId, revision.TeardownId })
            .Join(context.Teardowns, row => row.TeardownId, teardown => teardown.Id, (row, teardown) => new { row.FamilyId, row.RevisionId, row.ComponentId, teardown.Slug })
            .Join(
                context.Ratings.Where(rating => rating.Evidence == Evidence.ReadOnPart || rating.Evidence == Evidence.Datasheet),
                row => new { row.RevisionId, row.ComponentId },
                rating => new { rating.RevisionId, rating.ComponentId },
                (row, rating) => new { row.FamilyId, row.Slug, Rating = rating })
            .OrderBy(row => row.Slug)
            .ThenBy(row => row.Rating.Id)
            .Take(MaxRows)
            .ToListAsync(cancellationToken);
        var published = rows.ToLookup(
            row => row.FamilyId,
            row => new KnownRating(row.Rating.Kind, row.Rating.Interval, row.Rating.Condition, row.Rating.Evidence, Said($"family {names.GetValueOrDefault(row.FamilyId)}, as recorded in {row.Slug}", row.Rating.Source)));
        return ids.Distinct()
            .Select(id => (Id: id, Ratings: KnownRating.Choose(typical[id], published[id])))
            .Where(family => family.Ratings.Count > 0)
            .ToDictionary(family => family.Id, family => family.Ratings);
    }

    private static string Said(string where, string? source)
    {
        var said = source is null ? where : $"{where}: {source}";
        return said.Length <= MaxSource ? said : said[..(MaxSource - 1)] + "…";
    }
}
