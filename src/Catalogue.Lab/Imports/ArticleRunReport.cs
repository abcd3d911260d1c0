using Catalogue.Domain.Articles;
using Catalogue.Domain.Products;

namespace Catalogue.Lab.Imports;

/// <summary>What an import run of an article reports, as far as the lab shows it.</summary>
/// <param name="Teardown">The address of the teardown that was opened, or null.</param>
/// <param name="Title">The title, or null.</param>
/// <param name="Brand">The brand, or null.</param>
/// <param name="Name">The product's name, or null.</param>
/// <param name="Model">The model designation, or null.</param>
/// <param name="Category">The category, or null.</param>
/// <param name="Date">The day the article gives, or null.</param>
/// <param name="Missing">Codes of what the article does not say.</param>
/// <param name="Encoding">The encoding of its text.</param>
/// <param name="Sections">Its sections.</param>
/// <param name="Pictures">Its pictures.</param>
/// <param name="Lists">Its component lists.</param>
/// <param name="Warnings">What a person should know.</param>
public sealed record ArticleRunReport(
    string? Teardown,
    string? Title,
    string? Brand,
    string? Name,
    string? Model,
    ProductCategory? Category,
    DateOnly? Date,
    IReadOnlyList<string> Missing,
    string Encoding,
    IReadOnlyList<ArticleRunReport.Section> Sections,
    IReadOnlyList<ArticleRunReport.Picture> Pictures,
    IReadOnlyList<ArticleRunReport.List> Lists,
    IReadOnlyList<string> Warnings)
{
    /// <summary>A section.</summary>
    public sealed record Section(int Index, string? Heading, ArticleSectionKind Kind, int Characters);

    /// <summary>A picture.</summary>
    public sealed record Picture(string Address, string Outcome, string? Reason);

    /// <summary>A component list.</summary>
    public sealed record List(int Index, string? Board, bool BoardSure, int Rows);
}
