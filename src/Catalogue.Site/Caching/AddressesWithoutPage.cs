using Catalogue.Site.Layout;
using Microsoft.AspNetCore.Components.Endpoints;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Catalogue.Site.Caching;

/// <summary>
/// Gives an address that nothing answers the page that says so. A route that takes every address would do the same, but it would also take the
/// answers of 405 and 415 away from those routes that know better.
/// </summary>
/// <param name="next">The rest of the pipeline.</param>
/// <param name="endpoints">Where the page is mapped.</param>
public sealed class AddressesWithoutPage(RequestDelegate next, EndpointDataSource endpoints)
{
    /// <summary>Answers one request.</summary>
    public async Task InvokeAsync(HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        await next(context);
        var response = context.Response;
        if (response.StatusCode is not StatusCodes.Status404NotFound || response.HasStarted || response.ContentType is not null)
            return;
        if (endpoints.Endpoints.FirstOrDefault(endpoint => endpoint.Metadata.GetMetadata<ComponentTypeMetadata>()?.Type == typeof(NotFoundPage)) is not { RequestDelegate: { } render } page)
            return;
        context.SetEndpoint(page);
        context.Request.RouteValues.Clear();
        await render(context);
        response.StatusCode = StatusCodes.Status404NotFound;
    }
}
