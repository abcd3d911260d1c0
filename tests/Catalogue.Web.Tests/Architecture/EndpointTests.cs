using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace Catalogue.Web.Tests.Architecture;

/// <summary>Every endpoint is either meant for everybody, by name, or asks for a sign-in.</summary>
/// <param name="site">The site.</param>
public sealed class EndpointTests(SiteFixture site) : IClassFixture<SiteFixture>
{
    private static readonly string[] Private = ["lab", "account", "admin"];

    [Fact]
    public void Endpoints_ThatWrite_AskForASignIn()
    {
        var writing = Endpoints().Where(endpoint => endpoint.Metadata.GetMetadata<HttpMethodMetadata>()?.HttpMethods.Any(method => method is not ("GET" or "HEAD" or "OPTIONS")) == true).ToList();

        Assert.True(writing.Count > 25, $"Only {writing.Count} endpoints were looked at.");
        var open = writing.Where(endpoint => endpoint.Metadata.GetMetadata<IAllowAnonymous>() is not null).Select(endpoint => endpoint.RoutePattern.RawText);
        Assert.Equal(["/api/v1/ask", "/api/v1/decode/log", "/api/v1/decode/marking", "/api/v1/decode/package", "/api/v1/decode/pdo", "/api/v1/decode/quantity", "/sign-in", "/sign-in/once"], open.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Endpoints_BelowPrivateAddresses_AreNeverOpen()
    {
        var behind = Endpoints().Where(endpoint => Private.Any(prefix => endpoint.RoutePattern.RawText?.TrimStart('/').StartsWith(prefix + "/", StringComparison.Ordinal) == true || endpoint.RoutePattern.RawText?.TrimStart('/') == prefix)).ToList();

        Assert.NotEmpty(behind);
        Assert.Empty(behind.Where(endpoint => endpoint.Metadata.GetMetadata<IAllowAnonymous>() is not null && endpoint.RoutePattern.RawText != "/account/denied").Select(endpoint => endpoint.RoutePattern.RawText));
    }

    private List<RouteEndpoint> Endpoints() => [.. site.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()];
}
