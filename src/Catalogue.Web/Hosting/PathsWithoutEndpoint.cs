using Catalogue.Site;

namespace Catalogue.Web.Hosting;

/// <summary>
/// Answers requests that no endpoint takes: not found, wrong method, wrong content type. Without it the rule that everything needs a sign-in
/// would send strangers to the sign-in page for every misspelt address.
/// </summary>
/// <param name="next">The rest of the pipeline.</param>
internal sealed class PathsWithoutEndpoint(RequestDelegate next)
{
    public Task InvokeAsync(HttpContext context)
    {
        switch (context.GetEndpoint())
        {
            case null when CatalogueHost.IsApi(context.Request.Path) || !(HttpMethods.IsGet(context.Request.Method) || HttpMethods.IsHead(context.Request.Method)):
                context.Response.StatusCode = StatusCodes.Status404NotFound;
                return Task.CompletedTask;
            case null:
                return SiteEndpoints.WriteNotFoundAsync(context);
            // The router's own endpoints for 405 and 415 carry no route.
            case { RequestDelegate: { } refuse } endpoint when endpoint is not RouteEndpoint:
                return refuse(context);
            default:
                return next(context);
        }
    }
}
