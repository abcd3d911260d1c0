using Catalogue.Domain.Components;
using Catalogue.Domain.Photos;
using Catalogue.Domain.Teardowns;

namespace Catalogue.Domain.Publishing;

/// <summary>Every address that pages link to, from the root of the site. Links are made nowhere else.</summary>
public static class Addresses
{
    /// <summary>The public first page.</summary>
    public const string Home = "/";

    /// <summary>All published teardowns.</summary>
    public const string Teardowns = "/teardowns";

    /// <summary>All part families that readers may see.</summary>
    public const string Families = "/families";

    /// <summary>All makers that readers may see.</summary>
    public const string Makers = "/makers";

    /// <summary>The ready-made questions.</summary>
    public const string Ask = "/ask";

    /// <summary>Search.</summary>
    public const string Search = "/search";

    /// <summary>How the bench works and what figures mean.</summary>
    public const string About = "/about";

    /// <summary>The part of the page about the bench that explains figures and verdicts.</summary>
    public const string AboutFigures = About + "#figures";

    /// <summary>The description of the API, for people who write scripts and for their tools.</summary>
    public const string ApiDocument = "/api/v1/openapi.json";

    /// <summary>The lab's first page.</summary>
    public const string Lab = "/lab";

    /// <summary>Sign-in.</summary>
    public const string SignIn = "/sign-in";

    /// <summary>Sign-out; takes a POST.</summary>
    public const string SignOut = "/account/sign-out";

    /// <summary>The current page of a teardown.</summary>
    public static string Teardown(string slug) => $"/teardowns/{slug}";

    /// <summary>The lasting page of one revision.</summary>
    public static string Revision(string slug, int number) => FormattableString.Invariant($"/teardowns/{slug}/revisions/{number}");

    /// <summary>A part family's page.</summary>
    public static string Family(string slug) => $"/families/{slug}";

    /// <summary>A maker's page.</summary>
    public static string Maker(string slug) => $"/makers/{slug}";

    /// <summary>A ready-made question with its answer.</summary>
    public static string Question(string slug) => $"/ask/{slug}";

    /// <summary>A ready-made question with one parameter given.</summary>
    public static string Question(string slug, string parameter, string value) => $"/ask/{slug}?{parameter}={Uri.EscapeDataString(value)}";

    /// <summary>The answer to a ready-made question as JSON or CSV; takes the question's parameters, <c>format</c> and <c>limit</c>.</summary>
    public static string AnswerData(string slug) => $"/api/v1/questions/{slug}/answer";

    /// <summary>Teardowns of one category.</summary>
    public static string Category(string code) => $"/teardowns?category={code}";

    /// <summary>Published teardowns that match; each part may be null.</summary>
    /// <param name="category">The code of a category.</param>
    /// <param name="search">Words to look for.</param>
    /// <param name="after">The mark of the last row seen.</param>
    public static string TeardownList(string? category, string? search, string? after) =>
        Teardowns + Query(("category", category), ("search", search), ("after", after));

    /// <summary>Part families that match; each part may be null.</summary>
    /// <param name="search">A piece of a number.</param>
    /// <param name="after">The mark of the last row seen.</param>
    public static string FamilyList(string? search, string? after) => Families + Query(("search", search), ("after", after));

    /// <summary>Makers that match; each part may be null.</summary>
    /// <param name="search">A piece of a name.</param>
    /// <param name="after">The mark of the last row seen.</param>
    public static string MakerList(string? search, string? after) => Makers + Query(("search", search), ("after", after));

    /// <summary>A maker's page, from a place in its list of teardowns on.</summary>
    public static string Maker(string slug, string after) => Maker(slug) + Query(("after", after));

    /// <summary>Search for something.</summary>
    public static string SearchFor(string words) => Search + Query(("q", words));

    /// <summary>The row of a component on its teardown's page.</summary>
    public static string Component(string teardown, ComponentId component) => $"{Teardown(teardown)}#{ComponentAnchor(component)}";

    /// <summary>A rendition of a picture.</summary>
    /// <param name="sha256">The original's SHA-256.</param>
    /// <param name="widthPixels">One of <see cref="RenditionWidths.For"/>.</param>
    public static string Rendition(string sha256, int widthPixels) => FormattableString.Invariant($"/media/{sha256}/{widthPixels}.jpg");

    /// <summary>The component table of a teardown as CSV.</summary>
    public static string ComponentsCsv(string slug) => $"/api/v1/teardowns/{slug}/components.csv";

    /// <summary>A teardown as JSON.</summary>
    public static string TeardownJson(string slug) => $"/api/v1/teardowns/{slug}";

    /// <summary>The workbench of a teardown in the lab.</summary>
    public static string Workbench(string slug) => $"/lab/teardowns/{slug}";

    /// <summary>The workbench with one board open.</summary>
    public static string Workbench(string slug, BoardId board) => $"/lab/teardowns/{slug}?board={board}";

    /// <summary>The place of a component's row on its teardown's page.</summary>
    public static string ComponentAnchor(ComponentId component) => $"part-{component}";

    /// <summary>The place of a component's figure on its teardown's page.</summary>
    public static string FigureAnchor(Guid subject, string rule) => $"figure-{rule.Replace('_', '-')}-{subject:D}";

    /// <summary>The place of a photo on its teardown's page.</summary>
    public static string PhotoAnchor(PhotoId photo) => $"photo-{photo}";

    private static string Query(params ReadOnlySpan<(string Name, string? Value)> parts)
    {
        var query = "";
        foreach (var (name, value) in parts)
        {
            if (!string.IsNullOrEmpty(value))
                query += $"{(query.Length == 0 ? '?' : '&')}{name}={Uri.EscapeDataString(value)}";
        }

        return query;
    }
}
