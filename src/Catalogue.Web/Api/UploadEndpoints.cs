using System.ComponentModel;
using Catalogue.Data.Photos;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Photos;
using Catalogue.Domain.Teardowns;
using Catalogue.Media.Photos;
using Catalogue.Web.Accounts;
using Catalogue.Web.Imports;
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
    /// <param name="AlreadyThere">True where the teardown had a photo of this very content, which was left as it is; only where a path or a place was given, else null.</param>
    public sealed record PhotoSaved(Guid Id, int Width, int Height, bool? AlreadyThere = null);

    public static void MapUploads(this RouteGroupBuilder api)
    {
        var uploads = api.MapGroup("").RequireAuthorization(Policies.WriteToken).WithTags("records");
        uploads.MapPost("teardowns/{slug}/photos", AddPhotoAsync)
            .WithMetadata(new RequestSizeLimitAttribute(PhotoBodyLimit))
            .WithSummary("Adds a photo (JPEG, PNG or WebP, field file) to the draft; with path to where its name says. A photo of the same content that is there already is answered with 200.")
            .Accepts<IFormFile>("multipart/form-data")
            .Produces<PhotoSaved>(StatusCodes.Status201Created)
            .Produces<PhotoSaved>();
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
        string slug,
        HttpContext http,
        TeardownChanges teardowns,
        TeardownRecordQuery records,
        PhotoIntake intake,
        PhotoChanges photos,
        PlacePhoto places,
        CancellationToken cancel,
        [FromQuery] Guid? board = null,
        [FromQuery] string? subject = null,
        [FromQuery, Description("The file's path in its folder: without a board and a subject the place is taken from the names in it.")] string? path = null,
        [FromQuery(Name = "new_board"), Description("The name of a board that is added where there is none of that name.")] string? newBoard = null,
        [FromQuery, Description("The step that the photo belongs to, from 1.")] int? step = null,
        [FromQuery] string? caption = null)
    {
        if (Domain.Text.SnakeCase.TryParse<PhotoSubject>(subject) is not { } shown)
        {
            if (subject is not null)
                return ApiProblem.Of(StatusCodes.Status400BadRequest, $"subject is one of {string.Join(", ", Domain.Text.SnakeCase.All<PhotoSubject>())}; it was “{subject}”.", "subject");
            shown = board is null && newBoard is null ? PhotoSubject.Product : PhotoSubject.BoardTop;
        }

        if (board is not null && newBoard is not null)
            return ApiProblem.Of(StatusCodes.Status400BadRequest, "A photo is given a board or a new_board, not both.", "new_board");
        if (step is < 1 or > PhotoCorrections.HighestStep || (step is not null && shown is not PhotoSubject.Step))
            return ApiProblem.Of(StatusCodes.Status400BadRequest, $"step is 1 to {PhotoCorrections.HighestStep} and goes with subject=step.", "step");
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
            case PhotoReceipt.Accepted accepted when path is null && newBoard is null && step is null && caption is null:
                return (await photos.AddAsync(teardown, accepted.ToTakenIn(upload.FileName), new PhotoForm { BoardId = board, Subject = shown }, http.User.ToEditor(), cancel))
                    .ToResult(id => TypedResults.Json(new PhotoSaved(id.Value, accepted.Width, accepted.Height), statusCode: StatusCodes.Status201Created));
            case PhotoReceipt.Accepted accepted:
                var place = board is null && newBoard is null && subject is null && await records.LatestAsync(slug, cancel) is { } record
                    ? PhotoNames.Propose([path ?? upload.FileName ?? ""], [.. record.Boards.Select(row => new KnownBoard(row.Id, row.Position, row.Name))])[0].Place
                    : new PhotoPlace(shown, board is { } id ? BoardId.From(id) : null, newBoard, step);
                return (await places.RunAsync(teardown, accepted.ToTakenIn(Receipts.FileNameOf(path) ?? upload.FileName), place with { Caption = caption ?? place.Caption }, http.User.ToEditor(), cancel))
                    .ToResult(placed => TypedResults.Json(
                        new PhotoSaved(placed.Id.Value, accepted.Width, accepted.Height, placed.WasThere), statusCode: placed.WasThere ? StatusCodes.Status200OK : StatusCodes.Status201Created));
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
