using System.Globalization;
using System.Threading.RateLimiting;
using Catalogue.Web.Api;

namespace Catalogue.Web.Accounts;

/// <summary>How often an address may try to sign in.</summary>
internal static class RateLimits
{
    /// <summary>Sign-in and one-time links, for each address.</summary>
    public const string SignIn = "sign-in";

    public static void AddCatalogueRateLimits(this IServiceCollection services) => services.AddRateLimiter(options =>
    {
        options.RejectionStatusCode = StatusCodes.Status429TooManyRequests;
        options.OnRejected = async (context, cancel) =>
        {
            var wait = context.Lease.TryGetMetadata(MetadataName.RetryAfter, out var after) ? after : TimeSpan.FromMinutes(1);
            context.HttpContext.Response.Headers.RetryAfter = ((int)Math.Ceiling(wait.TotalSeconds)).ToString(CultureInfo.InvariantCulture);
            await context.HttpContext.Response.WriteAsJsonAsync(
                ApiProblem.Document(StatusCodes.Status429TooManyRequests, ApiProblem.Words(StatusCodes.Status429TooManyRequests, context.HttpContext.Request)), options: null, ApiProblem.ContentType, cancel);
        };
        options.AddPolicy(SignIn, context => RateLimitPartition.GetFixedWindowLimiter(
            context.Connection.RemoteIpAddress?.ToString() ?? "unknown",
            _ => new FixedWindowRateLimiterOptions { PermitLimit = 30, Window = TimeSpan.FromMinutes(1) }));
    });
}
