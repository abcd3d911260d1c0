using System.IO.Compression;
using Catalogue.Data;
using Catalogue.Data.Archives;
using Catalogue.Media.Photos;
using Catalogue.Testing;
using Catalogue.Web.Hosting;
using Catalogue.Web.Tests.Demo;
using Catalogue.Web.Verbs;
using Microsoft.Extensions.DependencyInjection;

namespace Catalogue.Web.Tests.Verbs;

/// <summary>The demo leaves one catalogue and comes into another by the verbs of the admin command, pictures through the real image worker.</summary>
/// <param name="demo">The demo.</param>
[Collection<PlantedDemoCollection>]
public sealed class ArchiveVerbsTests(PlantedDemo demo) : IAsyncLifetime
{
    private readonly string _folder = Directory.CreateTempSubdirectory("catalogue-archive-").FullName;
    private CatalogueDatabaseFixture _other = null!;
    private ServiceProvider _services = null!;

    public async ValueTask InitializeAsync()
    {
        _other = await CatalogueDatabaseFixture.CreateAsync();
        var services = new ServiceCollection();
        services.AddSingleton(CatalogueDatabase.OpenDataSource(_other.ConnectionString));
        services.AddCatalogueData();
        services.AddCatalogueMedia(_folder);
        _services = services.BuildServiceProvider();
    }

    public async ValueTask DisposeAsync()
    {
        await _services.DisposeAsync();
        await _other.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }

    [Fact]
    public async Task ExportImportExport_OfTheDemo_GivesTheSameLinesAndPictures()
    {
        var (first, second) = (Path.Combine(_folder, "first.zip"), Path.Combine(_folder, "second.zip"));
        var request = new ExportArchive.Request { WithDrafts = true };
        Assert.Equal(0, await ExportVerb.RunAsync(new DemoServices(demo.Services), first, request, default));

        Assert.Equal(0, await ImportVerb.RunAsync(_services, first, dryRun: true, keepPublished: false, default));
        Assert.Equal(0, await _other.ScalarAsync<long>("select count(*) from teardowns"));
        Assert.Equal(0, await ImportVerb.RunAsync(_services, first, dryRun: false, keepPublished: false, default));
        Assert.Equal(0, await ExportVerb.RunAsync(_services, second, request, default));

        Assert.Equal(Entries(first), Entries(second));
        Assert.Empty(Directory.EnumerateFiles(_folder, "*.part"));
        Assert.Equal(0, await ImportVerb.RunAsync(_services, second, dryRun: false, keepPublished: true, default));
        Assert.Equal(3, await _other.ScalarAsync<long>("select count(*) from teardowns"));
    }

    [Fact]
    public async Task Export_OfNothing_LeavesNoFile()
    {
        var file = Path.Combine(_folder, "none.zip");

        Assert.Equal(1, await ExportVerb.RunAsync(_services, file, new ExportArchive.Request { Teardowns = ["nowhere"] }, default));
        Assert.Equal(1, await ExportVerb.RunAsync(_services, Path.Combine(_folder, "no", "such", "folder.zip"), new ExportArchive.Request(), default));

        Assert.False(File.Exists(file));
    }

    [Fact]
    public async Task Import_OfWhatIsNoArchive_SaysSo()
    {
        var file = Path.Combine(_folder, "no.zip");
        await File.WriteAllTextAsync(file, "hello");

        Assert.Equal(1, await ImportVerb.RunAsync(_services, file, dryRun: false, keepPublished: false, default));
        Assert.Equal(1, await ImportVerb.RunAsync(_services, file + ".gone", dryRun: false, keepPublished: false, default));
    }

    // The CRC of each entry stands for its bytes; the manifest tells when it was made.
    private static List<(string Name, long Length, uint Crc)> Entries(string file)
    {
        using var zip = ZipFile.OpenRead(file);
        return [.. zip.Entries.Where(entry => entry.FullName != ArchiveForm.ManifestEntry).Select(entry => (entry.FullName, entry.Length, entry.Crc32))];
    }

    private sealed class DemoServices(IServiceProvider services) : IServiceProvider
    {
        public object? GetService(Type serviceType) => serviceType == typeof(ArchivePhotos)
            ? Imports.StoredPhotos.Of(services.GetRequiredService<MediaStore>(), services.GetRequiredService<PhotoIntake>())
            : services.GetService(serviceType);
    }
}
