using Catalogue.Domain.Families;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Archives;

/// <summary>Reads part families and makers as lines.</summary>
internal static class ArchiveFamilies
{
    /// <summary>How many are read at once.</summary>
    public const int Batch = 500;

    /// <summary>The lines of some families, in the order of the ids given.</summary>
    /// <param name="context">Reads them.</param>
    /// <param name="ids">At most <see cref="Batch"/>.</param>
    /// <param name="related">The families whose relations are told; null for all.</param>
    /// <param name="forOthers">True to leave out who said what.</param>
    /// <param name="cancellationToken">Cancels it.</param>
    public static async Task<IReadOnlyList<ArchiveLine.Family>> ReadAsync(
        CatalogueContext context, IReadOnlyList<FamilyId> ids, IReadOnlySet<FamilyId>? related, bool forOthers, CancellationToken cancellationToken)
    {
        var families = await context.Families.AsNoTracking().Where(row => ids.Contains(row.Id)).ToDictionaryAsync(row => row.Id, cancellationToken);
        var merged = families.Values.Select(row => row.MergedIntoId).OfType<FamilyId>().ToList();
        var relations = await context.FamilyRelations.AsNoTracking().Where(row => ids.Contains(row.OneId) || ids.Contains(row.OtherId)).ToListAsync(cancellationToken);
        var ends = relations.SelectMany(row => new[] { row.OneId, row.OtherId }).Concat(merged).Distinct().ToList();
        var keys = await context.Families.AsNoTracking().Where(row => ends.Contains(row.Id)).ToDictionaryAsync(row => row.Id, row => row.MatchKey, cancellationToken);
        var aliases = (await context.FamilyAliases.AsNoTracking().Where(row => ids.Contains(row.FamilyId)).ToListAsync(cancellationToken)).ToLookup(row => row.FamilyId);
        var ratings = (await context.FamilyRatings.AsNoTracking().Where(row => ids.Contains(row.FamilyId)).ToListAsync(cancellationToken)).ToLookup(row => row.FamilyId);
        var makers = (await context.FamilyMakers.AsNoTracking()
            .Where(row => ids.Contains(row.FamilyId))
            .Join(context.Makers, row => row.MakerId, maker => maker.Id, (row, maker) => new { row.FamilyId, maker.Name })
            .ToListAsync(cancellationToken)).ToLookup(row => row.FamilyId, row => row.Name);
        var marks = await context.TopMarks.AsNoTracking().Where(row => ids.Contains(row.FamilyId)).ToListAsync(cancellationToken);
        var owners = marks.Select(row => row.MakerId).Distinct().ToList();
        var names = await context.Makers.AsNoTracking().Where(row => owners.Contains(row.Id)).ToDictionaryAsync(row => row.Id, row => row.Name, cancellationToken);
        var codes = marks.ToLookup(row => row.FamilyId, row => new ArchiveLine.Code(row.Code, row.MakerId is { } maker ? names[maker] : null, row.Package, row.Source));
        return [.. ids.Where(families.ContainsKey).Select(id => families[id]).Select(Line)];

        ArchiveLine.Family Line(PartFamily row) => new()
        {
            MatchKey = row.MatchKey,
            Name = row.Name,
            Slug = row.Slug,
            FunctionClass = row.FunctionClass,
            DatasheetUrl = row.DatasheetUrl,
            Packages = row.Packages,
            Note = row.Note,
            MergedInto = row.MergedIntoId is { } target ? keys[target] : null,
            Makers = [.. makers[row.Id].Order(StringComparer.Ordinal)],
            Aliases = [.. aliases[row.Id].OrderBy(alias => alias.MatchKey, StringComparer.Ordinal).Select(alias => new ArchiveLine.OtherName(alias.Name, alias.MatchKey, alias.Kind))],
            TopMarks = [.. codes[row.Id].OrderBy(code => code.Text, StringComparer.Ordinal).ThenBy(code => code.Maker, StringComparer.Ordinal).ThenBy(code => code.Package, StringComparer.Ordinal).ThenBy(code => code.Source, StringComparer.Ordinal)],
            Ratings =
            [
                .. ratings[row.Id].Select(rating => new ArchiveLine.TypicalRating(rating.Kind, rating.Low, rating.Nominal, rating.High, rating.Condition, rating.Evidence, rating.Source))
                    .OrderBy(rating => rating.Kind).ThenBy(rating => rating.Nominal).ThenBy(rating => rating.Low).ThenBy(rating => rating.High)
                    .ThenBy(rating => rating.Condition, StringComparer.Ordinal).ThenBy(rating => rating.Evidence).ThenBy(rating => rating.Source, StringComparer.Ordinal),
            ],
            Relations =
            [
                .. relations.Where(relation => relation.OneId == row.Id || relation.OtherId == row.Id)
                    .Select(relation => (Relation: relation, Other: relation.OneId == row.Id ? relation.OtherId : relation.OneId))
                    .Where(pair => string.CompareOrdinal(row.MatchKey, keys[pair.Other]) < 0 && (related is null || related.Contains(pair.Other)))
                    .OrderBy(pair => keys[pair.Other], StringComparer.Ordinal)
                    .Select(pair => new ArchiveLine.Relation(keys[pair.Other], pair.Relation.Kind, pair.Relation.Note, pair.Relation.At, forOthers ? null : pair.Relation.Who)),
            ],
        };
    }
}
