using System.ComponentModel;
using Catalogue.Data.Archives;
using Catalogue.Web.Accounts;
using Microsoft.AspNetCore.Mvc;

namespace Catalogue.Web.Api;

/// <summary>A whole teardown as one archive, written while it is sent.</summary>
internal static class ArchiveEndpoint
{
    public static void MapArchive(this RouteGroupBuilder api) => api
        .MapGet("teardowns/{slug}/archive", GetAsync)
        .RequireAuthorization(Policies.AnyToken)
        .WithTags("teardowns")
        .WithSummary("The teardown with all its published revisions, its families, makers and photos as one archive (zip; docs/archive.md describes it).")
        .Produces(StatusCodes.Status200OK, contentType: "application/zip");

    private static async Task<IResult> GetAsync(
        string slug,
        HttpContext http,
        ExportArchive export,
        ArchivePhotos photos,
        CancellationToken cancel,
        [FromQuery, Description("True to put the draft in too.")] bool draft = false,
        [FromQuery(Name = "for_others"), Description("True for the form to give away: public copies of the photos, no serial number, nothing that the lab keeps to itself.")] bool forOthers = false)
    {
        if (HttpMethods.IsHead(http.Request.Method))
            return ApiProblem.Of(StatusCodes.Status405MethodNotAllowed, "An archive is made while it is sent; ask for it with GET.");
        var outcome = await export.RunAsync(new ExportArchive.Request { Teardowns = [slug], WithDrafts = draft, ForOthers = forOthers }, photos, Open, null, cancel);
        switch (outcome)
        {
            case ExportArchive.Outcome.Written:
                return TypedResults.Empty;
            case ExportArchive.Outcome.NotFound missing:
                return ApiProblem.Of(StatusCodes.Status404NotFound, missing.Reason);
            case ExportArchive.Outcome.NotYet notYet:
                http.Response.Headers.RetryAfter = "10";
                return ApiProblem.Of(StatusCodes.Status503ServiceUnavailable, notYet.Reason);
            default:
                throw new InvalidOperationException("Every end of an export is known.");
        }

        Task<Stream> Open(CancellationToken _)
        {
            http.Response.ContentType = "application/zip";
            http.Response.Headers.ContentDisposition = $"attachment; filename=\"{slug}.zip\"";
            http.Response.Headers.CacheControl = "no-store";
            return Task.FromResult(http.Response.Body);
        }
    }
}
