namespace Catalogue.Domain.Articles;

/// <summary>An article taken apart: what it says of the product, and its text in sections.</summary>
/// <param name="Facts">What its front matter says, and the title from its first heading where front matter gives none.</param>
/// <param name="Sections">Its sections in order.</param>
/// <param name="Warnings">What a person should know, in plain words.</param>
public sealed record Article(ArticleFacts Facts, IReadOnlyList<ArticleSection> Sections, IReadOnlyList<string> Warnings)
{
    /// <summary>The most sections.</summary>
    public const int MaxSections = 500;

    /// <summary>Its pictures in order.</summary>
    public IEnumerable<ArticlePicture> Pictures => Sections.SelectMany(section => section.Pictures);

    /// <summary>Its component lists in order.</summary>
    public IEnumerable<ArticleTable> Lists => Sections.SelectMany(section => section.Lists);
}
