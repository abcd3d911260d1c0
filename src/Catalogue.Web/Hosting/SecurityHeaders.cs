using Catalogue.Domain.Publishing;

namespace Catalogue.Web.Hosting;

/// <summary>Sets the headers that keep a page to itself. The lab's component library needs inline styles; nothing else gets them.</summary>
/// <param name="next">The rest of the pipeline.</param>
internal sealed class SecurityHeaders(RequestDelegate next)
{
    private const string Strict =
        "default-src 'none'; img-src 'self' data:; style-src 'self'; font-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

    private const string Lab =
        "default-src 'none'; script-src 'self'; connect-src 'self'; img-src 'self' data: blob:; style-src 'self' 'unsafe-inline'; font-src 'self' data:; form-action 'self'; base-uri 'self'; frame-ancestors 'none'";

    public Task InvokeAsync(HttpContext context)
    {
        // At the last moment, since a failing answer begins by clearing what was set before.
        context.Response.OnStarting(static state => Set((HttpContext)state), context);
        return next(context);
    }

    private static Task Set(HttpContext context)
    {
        var headers = context.Response.Headers;
        headers.ContentSecurityPolicy = context.Request.Path.StartsWithSegments(Addresses.Lab) ? Lab : Strict;
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "strict-origin-when-cross-origin";
        headers["Permissions-Policy"] = "camera=(), microphone=(), geolocation=()";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = context.Request.Path.StartsWithSegments("/media") ? "cross-origin" : "same-origin";
        if (context.Request.IsHttps)
            headers.StrictTransportSecurity = "max-age=31536000";
        return Task.CompletedTask;
    }
}
