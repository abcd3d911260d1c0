using Catalogue.Domain.Families;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Families;

/// <summary>
/// Finds the family of each part number by its exact match key, also among aliases and merged families, and opens families for numbers that
/// have none. Never fuzzy.
/// </summary>
internal static class LinkFamilies
{
    // Any fixed number will do, as long as everything that opens families takes the same lock.
    private const long OpeningLock = 7_341_001;

    /// <summary>
    /// True when a text is taken as a part number at all. Descriptions such as <c>Pin header 1x5, 2.54 mm pitch</c> stand in part-number columns
    /// too: they have more than two blanks, or no digit.
    /// </summary>
    public static bool IsIdentifying(PartNumber number) =>
        number.Base.Any(char.IsAsciiDigit) && number.Base.Count(char.IsWhiteSpace) <= 2 && number.Base.Length <= PartFamily.MaxNameLength;

    /// <summary>The family of each match key among the numbers; those that are not identifying have none.</summary>
    public static async Task<IReadOnlyDictionary<string, FamilyId>> RunAsync(
        CatalogueContext context, IEnumerable<PartNumber> numbers, CancellationToken cancellationToken)
    {
        var wanted = numbers.Where(IsIdentifying).DistinctBy(number => number.MatchKey).OrderBy(number => number.MatchKey, StringComparer.Ordinal).ToList();
        var found = await FindAsync(context, wanted, cancellationToken);
        if (wanted.TrueForAll(number => found.ContainsKey(number.MatchKey)))
            return found;

        await LockAsync(context, cancellationToken);
        found = await FindAsync(context, wanted, cancellationToken);
        var missing = wanted.Where(number => !found.ContainsKey(number.MatchKey)).ToList();
        var stems = missing.Select(number => Slug.From(number.MatchKey, "part")).ToList();
        var slugs = (await context.Families.Where(row => stems.Contains(row.Slug)).Select(row => row.Slug).ToListAsync(cancellationToken)).ToHashSet(StringComparer.Ordinal);
        // Only an address that is taken, or wanted twice, is followed by numbered ones.
        var patterns = stems.Where(slugs.Contains).Concat(stems.GroupBy(stem => stem).Where(group => group.Skip(1).Any()).Select(group => group.Key)).Distinct().Select(stem => stem + "-%").ToList();
        if (patterns.Count > 0)
            slugs.UnionWith(await context.Families.Where(row => patterns.Any(pattern => EF.Functions.Like(row.Slug, pattern))).Select(row => row.Slug).ToListAsync(cancellationToken));
        var opened = new List<PartFamily>(missing.Count);
        for (var i = 0; i < missing.Count; i++)
        {
            var attempt = 1;
            while (!slugs.Add(Slug.Numbered(stems[i], attempt)))
                attempt++;
            var family = new PartFamily
            {
                Id = FamilyId.New(),
                Name = missing[i].MatchKey,
                MatchKey = missing[i].MatchKey,
                SearchKey = missing[i].SearchKey,
                Slug = Slug.Numbered(stems[i], attempt),
            };
            opened.Add(family);
            found[family.MatchKey] = family.Id;
        }

        await context.WriteAsync(opened, cancellationToken);
        return found;
    }

    /// <summary>Takes the lock under which families are opened, named, merged and split, until the transaction ends.</summary>
    public static Task LockAsync(CatalogueContext context, CancellationToken cancellationToken) =>
        context.Database.ExecuteSqlAsync($"select pg_advisory_xact_lock({OpeningLock})", cancellationToken);

    /// <summary>The families that are there already, by match key; merged ones lead on.</summary>
    public static async Task<Dictionary<string, FamilyId>> FindAsync(CatalogueContext context, IEnumerable<PartNumber> wanted, CancellationToken cancellationToken)
    {
        var keys = wanted.Select(number => number.MatchKey).ToList();
        var aliases = await context.FamilyAliases
            .Where(row => keys.Contains(row.MatchKey))
            .Join(context.Families, row => row.FamilyId, family => family.Id, (row, family) => new { row.MatchKey, FamilyId = family.MergedIntoId ?? family.Id })
            .ToListAsync(cancellationToken);
        var own = await context.Families.Where(row => keys.Contains(row.MatchKey)).Select(row => new { row.MatchKey, Id = row.MergedIntoId ?? row.Id }).ToListAsync(cancellationToken);
        var found = aliases.ToDictionary(row => row.MatchKey, row => row.FamilyId, StringComparer.Ordinal);
        foreach (var row in own)
            found[row.MatchKey] = row.Id;
        return found;
    }
}
