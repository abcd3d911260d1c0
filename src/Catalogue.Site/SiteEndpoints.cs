using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace Catalogue.Site;

/// <summary>Maps the public pages.</summary>
public static class SiteEndpoints
{
    /// <summary>Maps every public page. The host maps its static assets first; the stylesheets then get addresses that carry their fingerprint.</summary>
    public static RouteGroupBuilder MapCatalogueSite(this IEndpointRouteBuilder endpoints)
    {
        var site = endpoints.MapGroup("");
        // No public page takes a form, so none carries a token, and with it a cookie that no shared cache could store.
        site.MapRazorComponents<SiteRoot>().WithStaticAssets().DisableAntiforgery();
        return site;
    }

    /// <summary>
    /// Answers an address that nothing else answers with a page that says so. Not an endpoint of its own: one that takes every address would also
    /// take the wrong methods of others.
    /// </summary>
    public static Task WriteNotFoundAsync(HttpContext context) =>
        new RazorComponentResult<SiteRoot> { StatusCode = StatusCodes.Status404NotFound, PreventStreamingRendering = true }.ExecuteAsync(context);
}
