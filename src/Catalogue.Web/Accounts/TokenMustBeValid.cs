using Catalogue.Web.Hosting;

namespace Catalogue.Web.Accounts;

/// <summary>A request of the API that presents a token which is not valid is refused, also where nobody need sign in.</summary>
/// <param name="next">The rest of the pipeline.</param>
internal sealed class TokenMustBeValid(RequestDelegate next)
{
    public Task InvokeAsync(HttpContext context)
    {
        if (context.Request.Headers.Authorization.Count == 0 || context.User.Identity?.IsAuthenticated == true || !CatalogueHost.IsApi(context.Request.Path))
            return next(context);
        context.Response.StatusCode = StatusCodes.Status401Unauthorized;
        context.Response.Headers.WWWAuthenticate = "Bearer error=\"invalid_token\"";
        return Task.CompletedTask;
    }
}
