using Catalogue.Data;
using Catalogue.Data.Publishing;
using Catalogue.Data.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Web.Demo;

/// <summary>The demo catalogue: an invented lab with invented products, planted into an empty catalogue only.</summary>
public static class DemoCatalogue
{
    // Of several nodes that start at once on an empty database one plants; the others wait for it and find teardowns.
    private const long PlantingLock = 7_341_003;

    internal static IReadOnlyList<DemoTeardown> Teardowns => [SorvaneDrover1000.Data, QuelvaneLath65.Data, FerrowickTor600.Data];

    /// <summary>Plants the demo, unless the catalogue holds a teardown already. Renditions of the pictures are left to the queue.</summary>
    /// <param name="services">Holds the changes of the data project and the photo intake.</param>
    /// <param name="cancellationToken">Ends the planting; what was written stays.</param>
    /// <returns>True when it was planted.</returns>
    /// <exception cref="InvalidOperationException">A change was refused; the text says which and why.</exception>
    public static async Task<bool> PlantAsync(IServiceProvider services, CancellationToken cancellationToken)
    {
        await using var context = await services.GetRequiredService<IDbContextFactory<CatalogueContext>>().CreateDbContextAsync(cancellationToken);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
        await context.Database.ExecuteSqlAsync($"select pg_advisory_xact_lock({PlantingLock})", cancellationToken);
        if (await context.Teardowns.AnyAsync(cancellationToken))
            return false;

        await NameLabAsync(services, cancellationToken);
        var builders = Teardowns.Select(teardown => new DemoBuilder(services, teardown)).ToList();
        // One after the other, so that numbers and the order of publication are always the same; the filling in between may overlap.
        foreach (var builder in builders)
            await builder.OpenAsync(cancellationToken);
        await Task.WhenAll(builders.Select(builder => builder.FillAsync(cancellationToken)));
        foreach (var builder in builders)
            await builder.PublishAsync(cancellationToken);
        return true;
    }

    private static async Task NameLabAsync(IServiceProvider services, CancellationToken cancellationToken)
    {
        var settings = await services.GetRequiredService<SettingsQuery>().RunAsync(cancellationToken);
        var form = new SettingsForm
        {
            LabName = "Tallow Lane Bench",
            PublicBaseAddress = settings.PublicBaseAddress,
            ContentLicence = "CC BY 4.0",
            Contact = "bench@tallow-lane.example",
        };
        if (await services.GetRequiredService<ChangeSettings>().RunAsync(form, null, new Editor("M. Adair"), cancellationToken) is ChangeOutcome<uint>.Refused refused)
            throw new InvalidOperationException($"The demo's lab settings were refused: {refused.Field}: {refused.Reason}");
    }
}
