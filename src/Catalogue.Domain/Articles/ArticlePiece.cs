namespace Catalogue.Domain.Articles;

/// <summary>A piece of an article's source: text, a picture or a list.</summary>
/// <param name="Written">The source as written.</param>
/// <param name="Picture">The picture that it is, or null.</param>
/// <param name="List">The component list that it is, or null.</param>
public sealed record ArticlePiece(string Written, ArticlePicture? Picture = null, ArticleTable? List = null);
