using Microsoft.AspNetCore.Antiforgery;

namespace Catalogue.Web.Api;

/// <summary>Refuses a request by cookie that does not carry the page's antiforgery token in its header.</summary>
/// <param name="antiforgery">Checks tokens.</param>
internal sealed class AntiforgeryHeaderFilter(IAntiforgery antiforgery) : IEndpointFilter
{
    public async ValueTask<object?> InvokeAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next) =>
        await antiforgery.IsRequestValidAsync(context.HttpContext)
            ? await next(context)
            : ApiProblem.Of(StatusCodes.Status400BadRequest, "The page is out of date; reload it and try again.");
}
