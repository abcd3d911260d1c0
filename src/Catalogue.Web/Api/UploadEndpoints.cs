using Catalogue.Data.Photos;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Photos;
using Catalogue.Domain.Teardowns;
using Catalogue.Media.Photos;
using Catalogue.Web.Accounts;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Mvc;

namespace Catalogue.Web.Api;

/// <summary>Photos, as files. The API and the lab take them through the same code.</summary>
internal static class UploadEndpoints
{
    // A little above the intake's own caps, so that its words are heard and not the server's.
    private const long PhotoBodyLimit = ImageLimits.DefaultMaxUploadBytes + (1024 * 1024);

    /// <summary>A photo that was added.</summary>
    /// <param name="Id">The same through all revisions.</param>
    /// <param name="Width">Width of the upright picture in pixels.</param>
    /// <param name="Height">Height of the upright picture in pixels.</param>
    public sealed record PhotoSaved(Guid Id, int Width, int Height);

    public static void MapUploads(this RouteGroupBuilder api)
    {
        var uploads = api.MapGroup("").RequireAuthorization(Policies.WriteToken).WithTags("records");
        uploads.MapPost("teardowns/{slug}/photos", AddPhotoAsync)
            .WithMetadata(new RequestSizeLimitAttribute(PhotoBodyLimit))
            .WithSummary("Adds a photo (JPEG, PNG or WebP, field file) to the draft.")
            .Accepts<IFormFile>("multipart/form-data")
            .Produces<PhotoSaved>(StatusCodes.Status201Created);
        api.MapListImport();
    }

    /// <summary>The same for people in the lab: signed in by cookie, with the antiforgery token in a header.</summary>
    public static void MapLabUploads(this IEndpointRouteBuilder app)
    {
        var lab = app.MapGroup("/lab").RequireAuthorization(Policies.Staff).AddEndpointFilter<AntiforgeryHeaderFilter>().ExcludeFromDescription();
        lab.MapPost("upload/{slug}", AddPhotoAsync).WithMetadata(new RequestSizeLimitAttribute(PhotoBodyLimit));
        lab.MapLabListImport();
        lab.MapImportForPeople();
    }

    private static async Task<IResult> AddPhotoAsync(
        string slug, HttpContext http, TeardownChanges teardowns, PhotoIntake intake, PhotoChanges photos, CancellationToken cancel, [FromQuery] Guid? board = null, [FromQuery] string? subject = null)
    {
        if (Domain.Text.SnakeCase.TryParse<PhotoSubject>(subject) is not { } shown)
        {
            if (subject is not null)
                return ApiProblem.Of(StatusCodes.Status400BadRequest, $"subject is one of {string.Join(", ", Domain.Text.SnakeCase.All<PhotoSubject>())}; it was “{subject}”.", "subject");
            shown = board is null ? PhotoSubject.Product : PhotoSubject.BoardTop;
        }

        if (await teardowns.FindAsync(slug, cancel) is not { } teardown)
            return ApiProblem.Of(StatusCodes.Status404NotFound, $"There is no teardown “{slug}”.");
        if (board is { } wanted && !await photos.HasBoardAsync(teardown, BoardId.From(wanted), cancel))
            return ApiProblem.Of(StatusCodes.Status404NotFound, $"There is no board {wanted} in “{slug}”.", "board");
        if (TooLong(http, PhotoBodyLimit))
            return ApiProblem.Of(StatusCodes.Status413PayloadTooLarge, $"A photo has at most {ImageLimits.DefaultMaxUploadBytes / (1024 * 1024)} MiB.");
        var upload = await UploadedFile.OpenAsync(http.Request, cancel);
        if (upload.Problem is { } problem)
            return problem;
        switch (await intake.ReceiveAsync(upload.Stream!, cancel))
        {
            case PhotoReceipt.Refused refused:
                return ApiProblem.Of(Status(refused.Reason), refused.Text, "file");
            case PhotoReceipt.NotChecked notChecked:
                http.Response.Headers.RetryAfter = "10";
                return ApiProblem.Of(StatusCodes.Status503ServiceUnavailable, notChecked.Text);
            case PhotoReceipt.Accepted accepted:
                var file = new PhotoChanges.TakenIn(accepted.Hash.Text, accepted.Kind.ToString().ToLowerInvariant(), accepted.Bytes, accepted.Width, accepted.Height, upload.FileName);
                var form = new PhotoForm { BoardId = board, Subject = shown };
                return (await photos.AddAsync(teardown, file, form, http.User.ToEditor(), cancel))
                    .ToResult(id => TypedResults.Json(new PhotoSaved(id.Value, accepted.Width, accepted.Height), statusCode: StatusCodes.Status201Created));
            default:
                throw new InvalidOperationException("Every receipt is known.");
        }
    }

    /// <summary>True for a body that says that it is too long. It is refused before a byte of it is read; one that does not say its length is cut by the server's limit.</summary>
    internal static bool TooLong(HttpContext http, long limit)
    {
        if (http.Request.ContentLength is not { } length || length <= limit)
            return false;
        http.Response.Headers.Connection = "close";
        return http.Features.Get<IHttpMaxRequestBodySizeFeature>() is not null;
    }

    private static int Status(ImageRefusal reason) => reason switch
    {
        ImageRefusal.TooManyBytes => StatusCodes.Status413PayloadTooLarge,
        ImageRefusal.NotAnImage or ImageRefusal.FormatNotAccepted or ImageRefusal.Empty => StatusCodes.Status415UnsupportedMediaType,
        _ => StatusCodes.Status422UnprocessableEntity,
    };
}
