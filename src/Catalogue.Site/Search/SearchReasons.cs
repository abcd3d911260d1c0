using Catalogue.Data.Teardowns;
using Catalogue.Site.Layout;

namespace Catalogue.Site.Search;

/// <summary>Says in words why something was found.</summary>
public static class SearchReasons
{
    /// <summary>Where the words of a search stand in a teardown, such as <c>“tor” in the product's name, “600” in the model</c>.</summary>
    public static string? For(string search, TeardownListItem item)
    {
        (string Field, string Text)[] fields = [("the brand", item.Brand), ("the product's name", item.ProductName), ("the model", item.Model), ("the title", item.Title)];
        var found = search
            .Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
            .Select(word => (Word: word, fields.FirstOrDefault(field => field.Text.Contains(word, StringComparison.OrdinalIgnoreCase)).Field))
            .Where(row => row.Field is not null)
            .GroupBy(row => row.Field)
            .Select(group => $"{WordsFor.List([.. group.Select(row => $"“{row.Word}”").Distinct()])} in {group.Key}")
            .ToList();
        return found.Count > 0 ? WordsFor.Capital(string.Join(", ", found)) : null;
    }

    /// <summary>Where the words of a search stand on a component, such as <c>in the marking as read</c>.</summary>
    public static string For(string search, MarkingsQuery.Row row)
    {
        (string Field, string? Text)[] fields = [("the marking as read", row.MarkingAsRead), ("the part number", row.PartNumber), ("the maker as read", row.MakerAsRead)];
        var words = search.Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        return "in " + WordsFor.List([.. fields.Where(field => words.Any(word => field.Text?.Contains(word, StringComparison.OrdinalIgnoreCase) == true)).Select(field => field.Field).DefaultIfEmpty("the component")]);
    }
}
