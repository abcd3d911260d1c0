using Catalogue.Data.Families;
using Catalogue.Domain.Packages;
using Catalogue.Site.Layout;

namespace Catalogue.Site.Families;

/// <summary>What was read on the parts of one family, letter for letter.</summary>
public static class FamilyReadings
{
    /// <summary>One text as read.</summary>
    /// <param name="Text">The text, or null where nothing could be read.</param>
    /// <param name="Designs">The designs it was read in, each with how many parts bear it; null where a quantity is not recorded.</param>
    public sealed record Reading(string? Text, IReadOnlyList<(FamilyQuery.Use Use, int? Parts)> Designs);

    /// <summary>The markings, the most often read first, components without one last.</summary>
    public static IReadOnlyList<Reading> Markings(IReadOnlyList<FamilyQuery.Use> uses) => By(uses, use => use.MarkingAsRead);

    /// <summary>The makers, the most often read first; components without one are left out.</summary>
    public static IReadOnlyList<Reading> Makers(IReadOnlyList<FamilyQuery.Use> uses) => By([.. uses.Where(use => use.MakerAsRead is not null)], use => use.MakerAsRead);

    /// <summary>How many parts there are, as far as their quantities are recorded.</summary>
    public static int? Parts(IEnumerable<FamilyQuery.Use> uses)
    {
        int? sum = 0;
        foreach (var use in uses)
            sum += use.Quantity;
        return sum;
    }

    /// <summary>The packages by canonical name where one is known, the most often first.</summary>
    public static IReadOnlyList<string> Packages(IEnumerable<PackageReading> packages) =>
        [.. packages.Select(package => package.Grouping).GroupBy(package => package, StringComparer.OrdinalIgnoreCase).OrderByDescending(group => group.Count()).Select(group => group.Key).Take(4)];

    /// <summary>What the catalogue cannot say of a family, in words; empty where nothing is missing.</summary>
    /// <param name="family">The family with its parts.</param>
    /// <param name="knowledge">What was recorded of it.</param>
    /// <param name="ratings">Its ratings.</param>
    public static IReadOnlyList<string> Gaps(FamilyQuery.Record family, FamilyKnowledgeQuery.Knowledge knowledge, IReadOnlyList<FamilyRatings.Row> ratings)
    {
        ArgumentNullException.ThrowIfNull(family);
        ArgumentNullException.ThrowIfNull(knowledge);
        var lines = family.Uses.Count;
        var gaps = new List<string>();
        if (family.FunctionClass is null)
            gaps.Add("Its function class is not decided.");
        if (knowledge.Makers.Count == 0)
            gaps.Add(family.Uses.Any(use => use.MakerAsRead is not null) ? "Who makes it is not recorded with the family; what was read on parts stands under names and makers." : "Who makes it is not known: nobody has read a maker on these parts.");
        if (family.DatasheetUrl is null)
            gaps.Add("No datasheet is linked.");
        if (ratings.Count == 0)
            gaps.Add("No rating of it is recorded, so nothing can be compared with it.");
        Count(use => use.MarkingAsRead is null, "has no marking that could be read", "have no marking that could be read");
        Count(use => use.Package is null, "has no package recorded", "have no package recorded");
        Count(use => use.Quantity is null, "has no quantity recorded", "have no quantity recorded");
        Count(use => use.Evidence is null, "does not say how the family is known", "do not say how the family is known");
        return gaps;

        void Count(Func<FamilyQuery.Use, bool> isMissing, string one, string several)
        {
            if (family.Uses.Count(isMissing) is > 0 and var missing)
                gaps.Add($"{WordsFor.Number(missing)} of {WordsFor.Count(lines, "component line")} {(missing == 1 ? one : several)}.");
        }
    }

    /// <summary>Where in its design a component sits, such as <c>U1, board A</c>.</summary>
    public static string Place(FamilyQuery.Use use) => string.Join(", ", new[] { use.Designators, use.Role }.OfType<string>().DefaultIfEmpty("one component"));

    private static List<Reading> By(IReadOnlyList<FamilyQuery.Use> uses, Func<FamilyQuery.Use, string?> text) =>
    [
        .. uses
            .GroupBy(text, StringComparer.Ordinal)
            .OrderBy(group => group.Key is null)
            .ThenByDescending(group => group.Count())
            .ThenBy(group => group.Key, StringComparer.Ordinal)
            .Select(group => new Reading(group.Key, [.. group.GroupBy(use => use.Teardown).Select(design => (design.First(), Parts(design)))])),
    ];
}
