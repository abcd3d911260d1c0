using Catalogue.Site.Caching;
using Catalogue.Site.Layout;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Components.Endpoints;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace Catalogue.Site;

/// <summary>Puts the public pages into the host.</summary>
public static class SiteEndpoints
{
    /// <summary>Maps every public page. The host maps its static assets first; the stylesheets then get addresses that carry their fingerprint.</summary>
    public static IEndpointConventionBuilder MapCatalogueSite(this IEndpointRouteBuilder endpoints)
    {
        // No public page takes a form, so none carries a token, and with it a cookie that no shared cache could store.
        var pages = endpoints.MapRazorComponents<SiteRoot>().WithStaticAssets().DisableAntiforgery();
        pages.Finally(ReadOnly);
        return pages;
    }

    /// <summary>
    /// Answers public pages from memory. For a branch of the pipeline that the host keeps the API and the lab out of; after routing or before, and
    /// before sign-in, which has no part in a public page.
    /// </summary>
    public static IApplicationBuilder UsePublicPageCache(this IApplicationBuilder app) => app.UseMiddleware<PublicPageCache>();

    // Component pages take GET and POST unless told otherwise; these are for reading, and whoever checks links asks with HEAD.
    private static void ReadOnly(EndpointBuilder page)
    {
        foreach (var methods in page.Metadata.OfType<HttpMethodMetadata>().ToList())
            page.Metadata.Remove(methods);
        page.Metadata.Add(new HttpMethodMetadata([HttpMethods.Get, HttpMethods.Head]));
    }

    /// <summary>
    /// Answers an address that nothing else answers with a page that says so. Not an endpoint of its own: one that takes every address would also
    /// take the wrong methods of others.
    /// </summary>
    public static Task WriteNotFoundAsync(HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        // Rendered as the mapped page, it knows the fingerprints of the stylesheets.
        var page = context.RequestServices.GetRequiredService<EndpointDataSource>().Endpoints
            .First(endpoint => endpoint.Metadata.GetMetadata<ComponentTypeMetadata>()?.Type == typeof(NotFoundPage));
        context.SetEndpoint(page);
        return new RazorComponentResult<SiteRoot> { StatusCode = StatusCodes.Status404NotFound, PreventStreamingRendering = true }.ExecuteAsync(context);
    }
}
