using Catalogue.Data;
using Catalogue.Web.Accounts;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace Catalogue.Web.Hosting;

/// <summary>Runs a verb of the admin command against the database, whether or not the site is running.</summary>
internal static class AdminSession
{
    public static async Task<int> RunAsync(string dataFolder, Func<IServiceProvider, CancellationToken, Task<int>> verb, CancellationToken cancellationToken)
    {
        var configuration = new ConfigurationBuilder().AddEnvironmentVariables().Build();
        await using var database = await DatabaseServer.OpenAsync(
            configuration.GetConnectionString("Catalogue"), Path.GetFullPath(dataFolder), joinRunning: true, Console.Error, Console.Error, cancellationToken);
        if (database is null)
            return 1;
        await using var source = CatalogueDatabase.OpenDataSource(database.ConnectionString);
        var services = new ServiceCollection();
        services.AddLogging();
        services.AddSingleton(source);
        services.AddCatalogueData();
        services.AddCatalogueAccounts();
        services.AddCatalogueMedia(Path.GetFullPath(dataFolder));
        await using var provider = services.BuildServiceProvider();
        try
        {
            await CatalogueDatabase.MigrateAsync(provider.GetRequiredService<IDbContextFactory<CatalogueContext>>(), cancellationToken);
        }
        catch (NpgsqlException exception)
        {
            await Console.Error.WriteLineAsync($"The database cannot be used: {exception.Message}");
            return 1;
        }

        return await verb(provider, cancellationToken);
    }
}
