using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Publishing;

/// <summary>Reads the lab's settings and the version of what readers see.</summary>
/// <param name="contexts">Makes the context of each query.</param>
public sealed class SettingsQuery(IDbContextFactory<CatalogueContext> contexts)
{
    /// <summary>The settings.</summary>
    public async Task<LabSettings> RunAsync(CancellationToken cancellationToken = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await context.LabSettings.AsNoTracking().SingleAsync(cancellationToken);
    }

    /// <summary>A number that grows whenever anything that readers see changes.</summary>
    public async Task<long> SiteVersionAsync(CancellationToken cancellationToken = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await context.SiteStates.AsNoTracking().Select(row => row.SiteVersion).SingleAsync(cancellationToken);
    }
}
