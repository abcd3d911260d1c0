using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.Net.Http.Headers;
using Npgsql;

namespace Catalogue.Web.Api;

/// <summary>
/// Sees to it that every failing answer of the API is a problem document, also those that the framework makes, and that a token that is not
/// valid is never taken for nobody.
/// </summary>
/// <param name="next">The rest of the pipeline.</param>
/// <param name="log">The log.</param>
internal sealed partial class ProblemMiddleware(RequestDelegate next, ILogger<ProblemMiddleware> log)
{
    public async Task InvokeAsync(HttpContext context)
    {
        if (!HasReadableCharset(context.Request))
        {
            await WriteAsync(context, StatusCodes.Status415UnsupportedMediaType, "The charset of the content type is not known; JSON is UTF-8.");
            return;
        }

        try
        {
            await next(context);
            if (!context.Response.HasStarted && context.Response.StatusCode >= 400 && context.Response.ContentLength is null && context.Response.ContentType is null)
                await WriteAsync(context, context.Response.StatusCode, ApiProblem.Words(context.Response.StatusCode, context.Request));
        }
        catch (BadHttpRequestException exception) when (!context.Response.HasStarted)
        {
            await WriteAsync(context, exception.StatusCode, Explain(exception, context.Request));
        }
        catch (InvalidDataException exception) when (!context.Response.HasStarted)
        {
            // The form reader's word for a multipart body past its limits or broken off.
            await WriteAsync(context, StatusCodes.Status400BadRequest, exception.Message);
        }
        catch (OperationCanceledException) when (context.RequestAborted.IsCancellationRequested)
        {
            context.Features.Get<IHttpRequestLifetimeFeature>()?.Abort();
        }
        catch (PostgresException exception) when (!context.Response.HasStarted && exception.SqlState == PostgresErrorCodes.CharacterNotInRepertoire)
        {
            await WriteAsync(context, StatusCodes.Status400BadRequest, "A text holds a character that no field takes, such as NUL.");
        }
        catch (NpgsqlException exception) when (!context.Response.HasStarted && exception.IsTransient)
        {
            log.LogError(exception, "The database did not answer {Method} {Path}.", context.Request.Method, context.Request.Path);
            context.Response.Headers.RetryAfter = "10";
            await WriteAsync(context, StatusCodes.Status503ServiceUnavailable, "The database does not answer; try again later.");
        }
        catch (Exception exception) when (!context.Response.HasStarted)
        {
            log.LogError(exception, "{Method} {Path} failed.", context.Request.Method, context.Request.Path);
            await WriteAsync(context, StatusCodes.Status500InternalServerError, ApiProblem.Words(StatusCodes.Status500InternalServerError, context.Request));
        }
    }

    private static bool HasReadableCharset(HttpRequest request) =>
        !MediaTypeHeaderValue.TryParse(request.ContentType, out var type) || !type.Charset.HasValue || type.Charset.Equals("utf-8", StringComparison.OrdinalIgnoreCase)
        || type.MediaType.Value?.Contains("json", StringComparison.OrdinalIgnoreCase) is not true;

    private static string Explain(BadHttpRequestException exception, HttpRequest request) => exception switch
    {
        { InnerException: JsonException json } => $"The JSON could not be read: {Plain(json)}",
        { StatusCode: StatusCodes.Status400BadRequest } when exception.Message.Contains("from body", StringComparison.Ordinal) =>
            "The call needs a JSON body; GET /api/v1/openapi.json lists the fields.",
        { StatusCode: StatusCodes.Status400BadRequest } when Unbound().Match(exception.Message) is { Success: true } unbound =>
            $"{unbound.Groups[1].Value} cannot be “{unbound.Groups[2].Value}”; GET /api/v1/openapi.json lists the parameters and their values.",
        { StatusCode: StatusCodes.Status400BadRequest } => exception.Message,
        _ => ApiProblem.Words(exception.StatusCode, request),
    };

    // The reader's message names .NET types; the path and our own converters' words are what a caller can use.
    private static string Plain(JsonException exception)
    {
        var message = exception.Message.Split(" Path: ", 2)[0];
        var where = string.IsNullOrEmpty(exception.Path) || exception.Path == "$" ? "" : $" (at {exception.Path})";
        if (message.Contains("could not be mapped to any .NET member", StringComparison.Ordinal))
            return $"the field “{message.Split('\'', 3).ElementAtOrDefault(1)}” is not known here{where}; GET /api/v1/openapi.json lists the fields.";
        if (message.Contains("could not be converted to", StringComparison.Ordinal))
            return $"the value{where} is not of the kind the field takes; GET /api/v1/openapi.json lists the fields and their values.";
        if (message.Contains("missing required properties", StringComparison.Ordinal))
            return $"required fields are missing{where}: {message.Split("including: ", 2).LastOrDefault()}";
        if (message.Contains("null values", StringComparison.Ordinal))
            return $"the field “{message.Split('\'', 3).ElementAtOrDefault(1)}” may not be null{where}.";
        return message + where;
    }

    private static async Task WriteAsync(HttpContext context, int status, string detail)
    {
        var retry = context.Response.Headers.RetryAfter;
        var allow = context.Response.Headers.Allow;
        var challenge = context.Response.Headers.WWWAuthenticate;
        context.Response.Clear();
        context.Response.Headers.RetryAfter = retry;
        context.Response.Headers.Allow = allow;
        context.Response.Headers.WWWAuthenticate = challenge;
        context.Response.Headers.CacheControl = "no-store";
        context.Response.StatusCode = status;
        await context.Response.WriteAsJsonAsync(ApiProblem.Document(status, detail), options: null, contentType: ApiProblem.ContentType);
    }

    // The framework's own words name .NET types; a caller needs the parameter's name and what it gave.
    [GeneratedRegex("^Failed to bind parameter \"\\S+ (\\w+)\" from \"(.*)\"", RegexOptions.Singleline)]
    private static partial Regex Unbound();
}
