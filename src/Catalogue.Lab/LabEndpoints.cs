using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Routing;

namespace Catalogue.Lab;

/// <summary>Maps the signed-in pages.</summary>
public static class LabEndpoints
{
    /// <summary>Maps every page of this assembly under one interactive root. Taking pictures and lists in is the host's.</summary>
    public static RazorComponentsEndpointConventionBuilder MapCatalogueLab(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapRazorComponents<LabRoot>().WithStaticAssets().AddInteractiveServerRenderMode();
}
