using Catalogue.Domain.Families;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Archives;

/// <summary>The families that match keys stand for here.</summary>
internal sealed class FamilyKeys
{
    private readonly Dictionary<string, Found> _found = new(StringComparer.Ordinal);

    private sealed record Found(FamilyId Id, FamilyId LeadsTo, string LeadsToKey);

    /// <summary>Looks keys up, among the families' own and their other numbers.</summary>
    public static async Task<FamilyKeys> ReadAsync(CatalogueContext context, IEnumerable<string> keys, CancellationToken cancellationToken)
    {
        var made = new FamilyKeys();
        foreach (var batch in keys.Chunk(2000))
        {
            var aliases = await context.FamilyAliases
                .Where(row => batch.Contains(row.MatchKey))
                .Join(context.Families, row => row.FamilyId, family => family.Id, (row, family) => new { row.MatchKey, family.Id, Root = family.MergedIntoId ?? family.Id })
                .Join(context.Families, row => row.Root, root => root.Id, (row, root) => new { row.MatchKey, row.Id, row.Root, RootKey = root.MatchKey })
                .ToListAsync(cancellationToken);
            var own = await context.Families
                .Where(row => batch.Contains(row.MatchKey))
                .Select(row => new { row.MatchKey, row.Id, Root = row.MergedIntoId ?? row.Id })
                .Join(context.Families, row => row.Root, root => root.Id, (row, root) => new { row.MatchKey, row.Id, row.Root, RootKey = root.MatchKey })
                .ToListAsync(cancellationToken);
            foreach (var row in aliases.Concat(own))
                made._found[row.MatchKey] = new Found(row.Id, row.Root, row.RootKey);
        }

        return made;
    }

    /// <summary>The match key of the family that a key leads to, merges followed; the key itself where it is not known here.</summary>
    public string LeadsTo(string key) => _found.GetValueOrDefault(key)?.LeadsToKey ?? key;

    /// <summary>The family of a key.</summary>
    /// <param name="key">The key; it is known here.</param>
    /// <param name="followMerges">True for the family that it counts to now.</param>
    public FamilyId Find(string key, bool followMerges) => followMerges ? _found[key].LeadsTo : _found[key].Id;
}
