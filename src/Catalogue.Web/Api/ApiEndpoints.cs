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
        api.MapImports();
        api.MapArchive();
        api.MapArticle();
        api.MapCatalogue();
        api.MapFamilies();
        api.MapFamilyNeighbours();
        api.MapIdentification();
        api.MapQuestions();
        api.MapDecodeLog();
        api.MapDecodeMarking();
        api.MapDecodeQuantity();
        api.MapDecodePdo();
        api.MapDecodePackage();
        app.MapOpenApi(Prefix + "/{documentName:regex(^openapi$)}.json").AllowAnonymous();
        ((IEndpointConventionBuilder)api).Finally(AlsoHead);
    }

    /// <summary>Whatever can be read can be asked for with HEAD.</summary>
    public static void AlsoHead(EndpointBuilder endpoint)
    {
        foreach (var methods in endpoint.Metadata.OfType<HttpMethodMetadata>().Where(found => found.HttpMethods.Contains(HttpMethods.Get) && !found.HttpMethods.Contains(HttpMethods.Head)).ToList())
        {
            endpoint.Metadata.Remove(methods);
            endpoint.Metadata.Add(new HttpMethodMetadata([.. methods.HttpMethods, HttpMethods.Head]));
        }
    }
}
