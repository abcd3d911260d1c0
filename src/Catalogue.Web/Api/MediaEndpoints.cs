using Catalogue.Data.Photos;
using Catalogue.Media.Photos;
using Catalogue.Web.Accounts;
using Microsoft.Net.Http.Headers;

namespace Catalogue.Web.Api;

/// <summary>Renditions of pictures. Originals are never served here: they may carry places and serial numbers.</summary>
internal static class MediaEndpoints
{
    private const string ForEver = "public, max-age=31536000, immutable";
    private const string ForStaff = "private, max-age=300";

    public static void MapMedia(this IEndpointRouteBuilder app) =>
        app.MapMethods("/media/{sha256:length(64)}/{width:int}.jpg", [HttpMethods.Get, HttpMethods.Head], GetAsync).AllowAnonymous().ExcludeFromDescription();

    private static async Task<IResult> GetAsync(string sha256, int width, HttpContext http, RenditionQuery query, MediaStore store, CancellationToken cancel)
    {
        if (!Sha256.TryParse(sha256, out var hash))
            return ApiProblem.Of(StatusCodes.Status404NotFound, "There is no such picture.");
        switch (await query.RunAsync(hash.Text, width, http.User.SeesDrafts(), cancel))
        {
            case RenditionQuery.Answer.Found { Rendition: var rendition, IsPublic: var isPublic }:
                if (MediaKey.TryParse(rendition.StoreName, out var key) && await store.OpenAsync(key, cancel) is { } content)
                {
                    http.Response.Headers.CacheControl = isPublic ? ForEver : ForStaff;
                    return TypedResults.Stream(content.Stream, "image/jpeg", entityTag: new EntityTagHeaderValue($"\"{rendition.ContentSha256[..32]}\""), enableRangeProcessing: true);
                }

                return NotYet(http);
            case RenditionQuery.Answer.NotYet:
                return NotYet(http);
            default:
                return ApiProblem.Of(StatusCodes.Status404NotFound, "There is no such picture.");
        }
    }

    private static IResult NotYet(HttpContext http)
    {
        http.Response.Headers.RetryAfter = "2";
        http.Response.Headers.CacheControl = "no-store";
        return ApiProblem.Of(StatusCodes.Status503ServiceUnavailable, "The picture is being prepared; try again in a moment.");
    }
}
