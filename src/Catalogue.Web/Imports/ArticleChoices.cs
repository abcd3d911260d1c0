using System.Globalization;
using System.Text.Json;
using Catalogue.Data.Conversions;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Articles;
using Catalogue.Domain.Products;
using Catalogue.Domain.Teardowns;
using Catalogue.Domain.Text;

namespace Catalogue.Web.Imports;

/// <summary>What a person said of an article: facts that it leaves out, and what becomes of its sections and lists.</summary>
/// <param name="Facts">Facts that count more than the article's own.</param>
/// <param name="Article">The file that is the article, or null.</param>
/// <param name="Encoding">IANA name of its encoding, or null.</param>
/// <param name="Sections">What sections become, by their place.</param>
/// <param name="Boards">The boards of component lists, by their place; a blank name leaves the list in the text.</param>
internal sealed record ArticleChoices(ArticleFacts Facts, string? Article, string? Encoding, IReadOnlyDictionary<int, ArticleSectionKind> Sections, IReadOnlyDictionary<int, string> Boards)
{
    /// <summary>The options of an address, each with what it says.</summary>
    public static IReadOnlyDictionary<string, string> Options { get; } = new Dictionary<string, string>
    {
        ["title"] = "the title of the record",
        ["brand"] = "the brand as printed on the product",
        ["name"] = "the product's name",
        ["model"] = "the model designation",
        ["category"] = $"one of {string.Join(", ", SnakeCase.All<ProductCategory>())}",
        ["date"] = "the day on which the sample was taken apart, as 2026-03-09",
        ["article"] = "the path of the article among the files, where there are several texts",
        ["encoding"] = "the encoding of the article (an IANA name), where it was found wrongly",
    };

    /// <summary>The fields in front of the file, each with what it says.</summary>
    public static IReadOnlyDictionary<string, string> Fields { get; } = new Dictionary<string, string>
    {
        ["sections"] = $"sections is a JSON object: the index of a section as the preview gives it, and one of {string.Join(", ", SnakeCase.All<ArticleSectionKind>())}.",
        ["boards"] = "boards is a JSON object: the index of a component list as the preview gives it, and the name of its board; an empty name leaves the list in the text.",
    };

    /// <summary>Reads them; null with the reason where one is wrong.</summary>
    public static ArticleChoices? TryParse(IReadOnlyDictionary<string, string> options, out Refusal? refusal)
    {
        string? Given(string name) => PlainText.Clean(options.GetValueOrDefault(name));
        var category = ArticleFacts.CategoryOf(Given("category"));
        var date = ArticleFacts.DayOf(Given("date"));
        refusal = Given("category") is { } wrong && category is null ? new Refusal("category", $"category is one of {string.Join(", ", SnakeCase.All<ProductCategory>())}; it was “{wrong}”.")
            : Given("date") is { } day && date is null ? new Refusal("date", $"date is a day, written as 2026-03-09; it was “{day}”.")
            : null;
        if (refusal is not null
            || Read<ArticleSectionKind>("sections", options, out refusal) is not { } sections
            || Read<string>("boards", options, out refusal) is not { } boards)
        {
            return null;
        }

        if (boards.Values.FirstOrDefault(name => name.Length > Board.MaxNameLength) is not null)
        {
            refusal = new Refusal("boards", $"A board's name has at most {Board.MaxNameLength} characters.");
            return null;
        }

        return new ArticleChoices(new ArticleFacts(Given("title"), Given("brand"), Given("name"), Given("model"), category, date), Given("article"), Given("encoding"), sections, boards);
    }

    private static Dictionary<int, T>? Read<T>(string name, IReadOnlyDictionary<string, string> options, out Refusal? refusal)
    {
        refusal = null;
        if (!options.TryGetValue(name, out var json) || string.IsNullOrWhiteSpace(json))
            return [];
        try
        {
            var read = JsonSerializer.Deserialize<Dictionary<string, T?>>(json, StoredJson.Options);
            if (read is not null && read.All(pair => pair.Value is not null && int.TryParse(pair.Key, NumberStyles.None, CultureInfo.InvariantCulture, out _)))
                return read.ToDictionary(pair => int.Parse(pair.Key, NumberStyles.None, CultureInfo.InvariantCulture), pair => pair.Value!);
        }
        catch (Exception exception) when (exception is JsonException or InvalidOperationException or ArgumentException)
        {
            // Said below.
        }

        refusal = new Refusal(name, Fields[name]);
        return null;
    }
}
