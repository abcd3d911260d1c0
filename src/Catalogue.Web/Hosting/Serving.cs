using System.Net.Sockets;
using Catalogue.Data;
using Catalogue.Data.Accounts;
using Catalogue.Media.Imports;
using Catalogue.Media.Photos;
using Catalogue.Web.Accounts;
using Catalogue.Web.Demo;
using Microsoft.AspNetCore.Connections;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace Catalogue.Web.Hosting;

/// <summary>A run of the site from the database's start to its stop.</summary>
public static class Serving
{
    /// <summary>Runs until the token says stop; 0 after a clean stop, 1 when it could not start.</summary>
    public static async Task<int> RunAsync(ServeOptions options, TextWriter output, TextWriter errors, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(output);
        ArgumentNullException.ThrowIfNull(errors);
        var named = options.ConnectionString ?? new ConfigurationBuilder().AddEnvironmentVariables().Build().GetConnectionString("Catalogue");
        try
        {
            await using var database = await DatabaseServer.OpenAsync(named, options.DataFolder, joinRunning: false, output, errors, stop);
            if (database is null)
                return 1;
            await using var source = CatalogueDatabase.OpenDataSource(database.ConnectionString);
            await using var site = CatalogueHost.Build(options, source);
            await PrepareAsync(site.Services, stop);
            // Set before anything answers, so that nobody hears "ready" in between.
            site.Services.GetRequiredService<Planting>().IsUnderWay = options.Demo is not DemoChoice.Never;
            await site.StartAsync(stop);
            var address = site.Urls.First();
            await output.WriteLineAsync($"The catalogue is at {address}");
            await PlantAsync(site.Services, options, output, stop);
            await FirstSignInAsync(site.Services, address, output, stop);
            await output.FlushAsync(stop);
            await site.WaitForShutdownAsync(stop);
            return 0;
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            return 0;
        }
        catch (IOException exception) when (exception.InnerException is AddressInUseException or SocketException)
        {
            await errors.WriteLineAsync($"Port {options.Port} is in use. Stop what listens there, or choose another with --port.");
            return 1;
        }
        catch (NpgsqlException exception)
        {
            await errors.WriteLineAsync($"The database cannot be used: {exception.Message}");
            await errors.WriteLineAsync(named is null ? "Its log stands in the data folder." : "Check ConnectionStrings__Catalogue and that the server answers; PostgreSQL 15 or later is needed.");
            return 1;
        }
    }

    private static async Task PrepareAsync(IServiceProvider services, CancellationToken stop)
    {
        var contexts = services.GetRequiredService<IDbContextFactory<CatalogueContext>>();
        // Uploads that a crash left half received; none that still runs is a day old.
        var now = services.GetRequiredService<TimeProvider>().GetUtcNow();
        services.GetRequiredService<MediaStore>().RemoveAbandoned(now.AddDays(-1));
        services.GetRequiredService<StagedFiles>().RemoveOlder(now - StagedFiles.KeptFor);
        await CatalogueDatabase.MigrateAsync(contexts, stop);
        await services.GetRequiredService<OpenAccount>().PrepareRolesAsync(stop);
    }

    // While the site answers already; it calls itself ready when the demo stands.
    private static async Task PlantAsync(IServiceProvider services, ServeOptions options, TextWriter output, CancellationToken stop)
    {
        if (options.Demo is DemoChoice.Never)
            return;
        if (await DemoCatalogue.PlantAsync(services, stop))
            await output.WriteLineAsync("The demo teardowns were planted (--no-demo leaves them out).");
        else if (options.Demo is DemoChoice.Asked)
            await output.WriteLineAsync("The catalogue has teardowns already; the demo is not planted.");
        services.GetRequiredService<Planting>().IsUnderWay = false;
    }

    // Until somebody has signed in for the first time, each start prints a fresh link; it never needs a password sent anywhere.
    private static async Task FirstSignInAsync(IServiceProvider services, string address, TextWriter output, CancellationToken stop)
    {
        if (await services.GetRequiredService<OpenAccount>().FirstAdministratorAsync(stop) is not { } code)
            return;
        await output.WriteLineAsync($"First start: sign in as administrator with this link, once, within {OneTimeSignIn.Lifetime.TotalHours:0} hours:");
        await output.WriteLineAsync($"{address}{SignInAddresses.OneTime(code)}");
    }
}
