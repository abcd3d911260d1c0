using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace Catalogue.Site;

/// <summary>Maps the public pages.</summary>
public static class SiteEndpoints
{
    /// <summary>
    /// Maps every public page, and a real 404 for every address that nothing else answers. The host maps its static assets first; the stylesheets
    /// then get addresses that carry their fingerprint.
    /// </summary>
    public static RouteGroupBuilder MapCatalogueSite(this IEndpointRouteBuilder endpoints)
    {
        var site = endpoints.MapGroup("");
        // No public page takes a form, so none carries a token, and with it a cookie that no shared cache could store.
        site.MapRazorComponents<SiteRoot>().WithStaticAssets().DisableAntiforgery();
        site.MapFallback("{*path}", () => new RazorComponentResult<SiteRoot> { StatusCode = StatusCodes.Status404NotFound, PreventStreamingRendering = true });
        return site;
    }
}
