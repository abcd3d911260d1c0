using Microsoft.AspNetCore.Authorization;
using Microsoft.OpenApi;

namespace Catalogue.Web.Api;

/// <summary>The OpenAPI document.</summary>
internal static class OpenApiSetup
{
    private const string SchemeName = "token";

    public static void AddCatalogueOpenApi(this IServiceCollection services) => services.AddOpenApi("openapi", options =>
    {
        options.OpenApiVersion = OpenApiSpecVersion.OpenApi3_1;
        options.ShouldInclude = description => description.RelativePath?.StartsWith("api/v1", StringComparison.Ordinal) == true;
        options.AddDocumentTransformer((document, _, _) =>
        {
            document.Info = new OpenApiInfo
            {
                Title = "Catalogue of teardowns",
                Version = "v1",
                Description = "Everything that readers see, and what scripts at the bench write. Fields carry their unit in their name or beside them; unknown is null, never zero. Errors are problem documents (RFC 9457).",
            };
            // The address differs from lab to lab; paths are from the root of the site.
            document.Servers = [];
            document.Components ??= new OpenApiComponents();
            document.Components.SecuritySchemes ??= new Dictionary<string, IOpenApiSecurityScheme>();
            document.Components.SecuritySchemes[SchemeName] = new OpenApiSecurityScheme
            {
                Type = SecuritySchemeType.Http,
                Scheme = "bearer",
                Description = "A token of the admin command: catalogue token NAME --scope write.",
            };
            return Task.CompletedTask;
        });
        options.AddOperationTransformer((operation, context, _) =>
        {
            if (context.Description.ActionDescriptor.EndpointMetadata.OfType<IAllowAnonymous>().Any())
                return Task.CompletedTask;
            operation.Security = [new OpenApiSecurityRequirement { [new OpenApiSecuritySchemeReference(SchemeName, context.Document)] = [] }];
            return Task.CompletedTask;
        });
    });
}
