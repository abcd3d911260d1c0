using Catalogue.Site.Caching;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Routing;

namespace Catalogue.Site;

/// <summary>Puts the public pages into the host.</summary>
public static class SiteEndpoints
{
    /// <summary>
    /// Maps every public page; anybody may read them. The host maps its static assets first: the stylesheets then get addresses that carry their
    /// fingerprint.
    /// </summary>
    public static void MapCatalogueSite(this IEndpointRouteBuilder endpoints) =>
        // No public page takes a form, so none carries a token, and with it a cookie that no shared cache could store.
        endpoints.MapRazorComponents<SiteRoot>().WithStaticAssets().DisableAntiforgery().AllowAnonymous();

    /// <summary>
    /// Answers public pages from memory and gives addresses without a page the one that says so. For a branch of the pipeline that holds public pages
    /// alone (no API, no lab, no account, no static asset), before routing and sign-in.
    /// </summary>
    public static IApplicationBuilder UseCatalogueSite(this IApplicationBuilder app) =>
        app.UseMiddleware<PublicPageCache>().UseMiddleware<AddressesWithoutPage>();
}
