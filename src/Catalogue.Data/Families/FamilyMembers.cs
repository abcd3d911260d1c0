using Catalogue.Domain.Families;

namespace Catalogue.Data.Families;

/// <summary>A family and those merged into it: their names, marks, makers and ratings show as its own. A merge is never two steps deep.</summary>
internal static class FamilyMembers
{
    /// <summary>Their ids ($1: those of the families), for SQL written by hand.</summary>
    public const string Sql = "select id from families where id = any($1) or merged_into_id = any($1)";

    /// <summary>The families among those that are one of these or were merged into one of them.</summary>
    public static IQueryable<PartFamily> MembersOf(this IQueryable<PartFamily> families, params IReadOnlyCollection<FamilyId> ids) =>
        families.Where(row => ids.Contains(row.Id) || (row.MergedIntoId != null && ids.Contains(row.MergedIntoId.Value)));
}
