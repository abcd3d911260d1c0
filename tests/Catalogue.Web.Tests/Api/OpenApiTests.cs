using System.Net;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace Catalogue.Web.Tests.Api;

/// <summary>The document that every message points to.</summary>
/// <param name="site">The site.</param>
public sealed class OpenApiTests(SiteFixture site) : IClassFixture<SiteFixture>
{
    [Fact]
    public async Task Document_ListsEveryAddressOfTheApi()
    {
        var document = await site.Anonymous.GetJsonAsync("/api/v1/openapi.json");

        Assert.StartsWith("3.1", document.Text("openapi"), StringComparison.Ordinal);
        var listed = document.GetProperty("paths").EnumerateObject().Select(path => path.Name).ToHashSet(StringComparer.Ordinal);
        var mapped = site.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
            .Select(endpoint => "/" + endpoint.RoutePattern.RawText!.Trim('/'))
            .Where(path => path.StartsWith("/api/v1/", StringComparison.Ordinal) && !path.Contains("documentName", StringComparison.Ordinal))
            .Select(path => path.Replace(":guid", "", StringComparison.Ordinal).Replace(":int", "", StringComparison.Ordinal))
            .Distinct()
            .ToList();
        Assert.True(mapped.Count > 25, $"Only {mapped.Count} addresses were looked at.");
        Assert.DoesNotContain(mapped, path => !listed.Contains(path));
    }

    [Fact]
    public async Task Document_DescribesFieldsAndWhoMayWrite()
    {
        var document = await site.Anonymous.GetJsonAsync("/api/v1/openapi.json");

        var rail = document.GetProperty("components").GetProperty("schemas").GetProperty("RailForm").GetProperty("properties");
        Assert.Contains("volt", rail.GetProperty("min_voltage_v").ToString(), StringComparison.Ordinal);
        Assert.True(document.GetProperty("paths").GetProperty("/api/v1/teardowns").GetProperty("post").TryGetProperty("security", out _));
        Assert.False(document.GetProperty("paths").GetProperty("/api/v1/teardowns").GetProperty("get").TryGetProperty("security", out _));
    }

    [Fact]
    public async Task Document_OfAnotherName_IsNotFoundAsAProblem() => await site.Anonymous.GetJsonAsync("/api/v1/other.json", HttpStatusCode.NotFound);
}
