using Catalogue.Data.Publishing;
using Catalogue.Site.Caching;
using Catalogue.Site.Layout;
using Catalogue.Site.Markdown;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;

namespace Catalogue.Site;

/// <summary>Registers what the public pages need beside the queries.</summary>
public static class SiteServices
{
    /// <summary>Adds the public pages and their cache. <c>AddCatalogueData</c> must have been called as well.</summary>
    public static IServiceCollection AddCatalogueSite(this IServiceCollection services)
    {
        services.AddRazorComponents();
        services.TryAddSingleton(TimeProvider.System);
        services.AddScoped<SiteSettings>();
        services.AddSingleton<SafeMarkdown>();
        services.AddSingleton(_ => new PageStore());
        services.AddSingleton<ReadSiteVersion>(provider => provider.GetRequiredService<SettingsQuery>().SiteVersionAsync);
        return services;
    }
}
