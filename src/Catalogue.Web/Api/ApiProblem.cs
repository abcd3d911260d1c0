using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace Catalogue.Web.Api;

/// <summary>Makes the problem documents (RFC 9457) of the API: what was wrong, and what would be right.</summary>
internal static class ApiProblem
{
    public const string ContentType = "application/problem+json";

    public static ProblemHttpResult Of(int status, string detail, string? field = null) => TypedResults.Problem(Document(status, detail, field));

    public static ProblemDetails Document(int status, string detail, string? field = null)
    {
        var problem = new ProblemDetails { Status = status, Title = Title(status), Detail = detail, Type = "about:blank" };
        if (field is not null)
            problem.Extensions["field"] = field;
        return problem;
    }

    /// <summary>The text for an answer that the framework left empty.</summary>
    public static string Words(int status, HttpRequest request) => status switch
    {
        StatusCodes.Status400BadRequest => "The request could not be understood.",
        StatusCodes.Status401Unauthorized => request.Headers.Authorization.Count > 0
            ? "The token is unknown or was taken back. Make one with the admin command: catalogue token NAME --scope write."
            : "This call needs a bearer token. Make one with the admin command: catalogue token NAME --scope write.",
        StatusCodes.Status403Forbidden => "This token may read only; the call needs one made with --scope write.",
        StatusCodes.Status404NotFound => $"There is nothing at {request.Path}. GET /api/v1/openapi.json lists the addresses.",
        StatusCodes.Status405MethodNotAllowed => $"{request.Method} does not work on {request.Path}; the Allow header says what does.",
        StatusCodes.Status413PayloadTooLarge => "The request is too large.",
        StatusCodes.Status415UnsupportedMediaType => "The content type is not taken here: JSON calls take application/json, uploads take multipart/form-data.",
        StatusCodes.Status429TooManyRequests => "Too many requests; wait as long as the Retry-After header says.",
        StatusCodes.Status503ServiceUnavailable => "The catalogue cannot answer right now; try again later.",
        _ => "Something went wrong on the server; its log says more.",
    };

    private static string Title(int status) => status switch
    {
        StatusCodes.Status400BadRequest => "Bad request",
        StatusCodes.Status401Unauthorized => "Not signed in",
        StatusCodes.Status403Forbidden => "Not allowed",
        StatusCodes.Status404NotFound => "Not found",
        StatusCodes.Status405MethodNotAllowed => "Method not allowed",
        StatusCodes.Status409Conflict => "Conflict",
        StatusCodes.Status410Gone => "Withdrawn",
        StatusCodes.Status413PayloadTooLarge => "Too large",
        StatusCodes.Status415UnsupportedMediaType => "Unsupported media type",
        StatusCodes.Status422UnprocessableEntity => "Not acceptable",
        StatusCodes.Status429TooManyRequests => "Too many requests",
        StatusCodes.Status503ServiceUnavailable => "Not ready",
        _ => status >= 500 ? "Server error" : "Problem",
    };
}
