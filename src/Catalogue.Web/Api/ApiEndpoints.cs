namespace Catalogue.Web.Api;

/// <summary>The API.</summary>
internal static class ApiEndpoints
{
    /// <summary>Where its addresses begin.</summary>
    public const string Prefix = "/api/v1";

    public static void MapApi(this IEndpointRouteBuilder app)
    {
        var api = app.MapGroup(Prefix);
        api.MapTeardowns();
        api.MapRecords();
        api.MapUploads();
        api.MapCatalogue();
        api.MapQuestions();
        app.MapOpenApi(Prefix + "/openapi.json").AllowAnonymous();
    }
}
