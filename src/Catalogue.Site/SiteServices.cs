using Catalogue.Site.Layout;
using Microsoft.Extensions.DependencyInjection;

namespace Catalogue.Site;

/// <summary>Registers what the public pages need beside the queries.</summary>
public static class SiteServices
{
    /// <summary>Adds the public pages. <c>AddCatalogueData</c> must have been called as well.</summary>
    public static IServiceCollection AddCatalogueSite(this IServiceCollection services)
    {
        services.AddRazorComponents();
        services.AddScoped<SiteSettings>();
        return services;
    }
}
