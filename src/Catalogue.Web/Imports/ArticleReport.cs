using Catalogue.Domain.Articles;
using Catalogue.Domain.Components.Lists;
using Catalogue.Domain.Products;

namespace Catalogue.Web.Imports;

/// <summary>What came of an article, or would come of it.</summary>
/// <param name="Teardown">The address of the teardown that was opened, or null.</param>
/// <param name="DryRun">True where nothing was changed.</param>
/// <param name="Title">The title, or null.</param>
/// <param name="Brand">The brand, or null.</param>
/// <param name="Name">The product's name, or null.</param>
/// <param name="Model">The model designation, or null.</param>
/// <param name="Category">The category, or null.</param>
/// <param name="Date">The day the article gives, or null.</param>
/// <param name="Missing">The options that must be given, since the article does not say them.</param>
/// <param name="Article">The file that was read as the article, or null where it came alone.</param>
/// <param name="Encoding">IANA name of its encoding.</param>
/// <param name="SameAs">The address of a teardown that was opened from the same text, or null.</param>
/// <param name="Sections">What its sections become.</param>
/// <param name="Pictures">What its pictures become.</param>
/// <param name="Lists">What its component lists become.</param>
/// <param name="Unused">Files beside the article that it does not show, or that were passed over.</param>
/// <param name="Warnings">What a person should know.</param>
internal sealed record ArticleReport(
    string? Teardown,
    bool DryRun,
    string? Title,
    string? Brand,
    string? Name,
    string? Model,
    ProductCategory? Category,
    DateOnly? Date,
    IReadOnlyList<string> Missing,
    string? Article,
    string Encoding,
    string? SameAs,
    IReadOnlyList<ArticleReport.Section> Sections,
    IReadOnlyList<ArticleReport.Picture> Pictures,
    IReadOnlyList<ArticleReport.List> Lists,
    IReadOnlyList<string> Unused,
    IReadOnlyList<string> Warnings)
{
    /// <summary>A section.</summary>
    /// <param name="Index">Its place in the article, from 0; the name by which it is corrected.</param>
    /// <param name="Heading">Its heading, or null for the text above the first one.</param>
    /// <param name="Kind">What it becomes.</param>
    /// <param name="Characters">The length of its text.</param>
    /// <param name="TasksDone">Ticked items of task lists.</param>
    /// <param name="Tasks">Items of task lists.</param>
    /// <param name="Footnotes">Footnotes it refers to.</param>
    public sealed record Section(int Index, string? Heading, ArticleSectionKind Kind, int Characters, int TasksDone, int Tasks, int Footnotes);

    /// <summary>A picture.</summary>
    /// <param name="Index">Its place in the article, from 0.</param>
    /// <param name="Section">The section it stands in.</param>
    /// <param name="Address">Its address as written.</param>
    /// <param name="Path">The file it was looked for in, or null.</param>
    /// <param name="Outcome">What became of it.</param>
    /// <param name="Place">Where it goes, or null.</param>
    /// <param name="Reason">Why it is not taken in, or what is odd about it, or null.</param>
    /// <param name="Photo">The id of the photo, or null.</param>
    public sealed record Picture(int Index, int Section, string Address, string? Path, PhotoOutcome Outcome, PhotosReport.Place? Place, string? Reason, Guid? Photo);

    /// <summary>A component list.</summary>
    /// <param name="Index">Its place among the article's lists, from 0; the name by which its board is given.</param>
    /// <param name="Section">The section it stands in.</param>
    /// <param name="Board">The board it goes to; null where it stays in the text.</param>
    /// <param name="BoardSure">False where no heading and no person names the board.</param>
    /// <param name="Rows">Its part lines.</param>
    /// <param name="Imported">How many became components, or would; null where it stays in the text.</param>
    /// <param name="Rejected">Those that could not.</param>
    /// <param name="Warnings">What a person should know of it.</param>
    public sealed record List(int Index, int Section, string? Board, bool BoardSure, int Rows, int? Imported, IReadOnlyList<RejectedRow> Rejected, IReadOnlyList<string> Warnings);
}
