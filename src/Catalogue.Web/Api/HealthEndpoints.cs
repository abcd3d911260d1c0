using Catalogue.Data.Publishing;
using Catalogue.Data.Queue;
using Catalogue.Media.Photos;
using Catalogue.Web.Hosting;

namespace Catalogue.Web.Api;

/// <summary>Tells whoever watches the site whether it lives and whether it can serve.</summary>
internal static class HealthEndpoints
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(3);

    /// <summary>An answer.</summary>
    /// <param name="Status"><c>live</c> or <c>ready</c>.</param>
    public sealed record Health(string Status);

    public static void MapHealth(this IEndpointRouteBuilder app)
    {
        app.MapGet("/health/live", () => TypedResults.Ok(new Health("live"))).AllowAnonymous().ExcludeFromDescription().Finally(ApiEndpoints.AlsoHead);
        app.MapGet("/health/ready", ReadyAsync).AllowAnonymous().ExcludeFromDescription().Finally(ApiEndpoints.AlsoHead);
    }

    private static async Task<IResult> ReadyAsync(HttpContext http, SettingsQuery settings, JobQueue queue, MediaStore media, Planting planting, CancellationToken cancel)
    {
        http.Response.Headers.CacheControl = "no-store";
        foreach (var (part, check) in new (string, Func<CancellationToken, Task<bool>>)[]
        {
            ("database", async token => await settings.SiteVersionAsync(token) > 0),
            ("media", media.IsReadyAsync),
            ("queue", queue.IsReadyAsync),
            ("demo", _ => Task.FromResult(!planting.IsUnderWay)),
        })
        {
            using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancel);
            limit.CancelAfter(Patience);
            bool ready;
            try
            {
                ready = await check(limit.Token);
            }
            catch (Exception) when (!cancel.IsCancellationRequested)
            {
                ready = false;
            }

            if (ready)
                continue;
            var problem = ApiProblem.Document(StatusCodes.Status503ServiceUnavailable, $"Not ready: {part}.");
            problem.Extensions["part"] = part;
            return TypedResults.Problem(problem);
        }

        return TypedResults.Ok(new Health("ready"));
    }
}
