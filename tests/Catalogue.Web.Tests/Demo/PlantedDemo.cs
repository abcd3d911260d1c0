using Catalogue.Data;
using Catalogue.Media.Photos;
using Catalogue.Testing;
using Catalogue.Web.Demo;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace Catalogue.Web.Tests.Demo;

/// <summary>The demo, planted once into a database of its own; its pictures pass through the real image worker.</summary>
public sealed class PlantedDemo : IAsyncLifetime
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("catalogue-demo-");
    private string? _connectionString;
    private ServiceProvider? _services;

    public IServiceProvider Services => _services!;

    public bool WasPlanted { get; private set; }

    public async ValueTask InitializeAsync()
    {
        var server = await PostgresTestServer.SharedAsync();
        _connectionString = await server.CreateDatabaseAsync();
        var services = new ServiceCollection();
        services.AddSingleton(CatalogueDatabase.OpenDataSource(_connectionString));
        services.AddCatalogueData();
        services.AddSingleton(new MediaStore(Path.Combine(_folder.FullName, "media")));
        services.AddSingleton(provider => new ImageWorkerProcess(
            new ImageWorkerOptions { Command = ["dotnet", Path.Combine(AppContext.BaseDirectory, "catalogue.dll"), ImageWorker.Verb], ScratchFolder = _folder.FullName },
            provider.GetRequiredService<TimeProvider>()));
        services.AddSingleton(provider => new PhotoIntake(provider.GetRequiredService<MediaStore>(), provider.GetRequiredService<ImageWorkerProcess>()));
        _services = services.BuildServiceProvider();
        await CatalogueDatabase.MigrateAsync(_services.GetRequiredService<IDbContextFactory<CatalogueContext>>());

        WasPlanted = await DemoCatalogue.PlantAsync(_services, CancellationToken.None);
    }

    public async ValueTask DisposeAsync()
    {
        if (_services is not null)
            await _services.DisposeAsync();
        if (_connectionString is not null)
            await (await PostgresTestServer.SharedAsync()).DropDatabaseAsync(_connectionString);
        _folder.Delete(recursive: true);
    }
}
