using Catalogue.Data.Articles;
using Catalogue.Web.Accounts;

namespace Catalogue.Web.Api;

/// <summary>The article that a teardown was opened from.</summary>
internal static class ArticleEndpoint
{
    /// <summary>An article as it was read.</summary>
    /// <param name="FileName">The name of its file, or null.</param>
    /// <param name="Encoding">IANA name of the encoding in which it was read.</param>
    /// <param name="Text">The text, whole.</param>
    /// <param name="Sha256">SHA-256 of the text in UTF-8, lower-case hex.</param>
    /// <param name="ImportedAt">When it was brought in.</param>
    public sealed record ArticleAnswer(string? FileName, string Encoding, string Text, string Sha256, DateTimeOffset ImportedAt);

    public static void MapArticle(this RouteGroupBuilder api) =>
        api.MapGet("teardowns/{slug}/article", GetAsync)
            .RequireAuthorization(Policies.AnyToken)
            .WithTags("teardowns")
            .WithSummary("The article that a teardown was opened from, as it was read; never public.")
            .Produces<ArticleAnswer>();

    private static async Task<IResult> GetAsync(string slug, ImportedArticleQuery articles, CancellationToken cancel) =>
        await articles.OfAsync(slug, cancel) is { } article
            ? TypedResults.Ok(new ArticleAnswer(article.FileName, article.Encoding, article.Text, article.Sha256, article.ImportedAt))
            : ApiProblem.Of(StatusCodes.Status404NotFound, $"There is no teardown “{slug}” that was opened from an article.");
}
