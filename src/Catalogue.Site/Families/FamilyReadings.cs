using Catalogue.Data.Families;

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
