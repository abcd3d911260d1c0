using Catalogue.Data.Archives;
using Catalogue.Media.Photos;
using Catalogue.Web.Imports;

namespace Catalogue.Web.Hosting;

/// <summary>Registers what takes pictures in and keeps them; the site and the admin command work on the same folder.</summary>
internal static class MediaServices
{
    public static void AddCatalogueMedia(this IServiceCollection services, string dataFolder)
    {
        services.AddSingleton(_ => new MediaStore(Path.Combine(dataFolder, "media")));
        services.AddSingleton(provider => new ImageWorkerProcess(new ImageWorkerOptions { Command = WorkerCommand() }, provider.GetRequiredService<TimeProvider>()));
        services.AddSingleton(provider => new PhotoIntake(provider.GetRequiredService<MediaStore>(), provider.GetRequiredService<ImageWorkerProcess>()));
        services.AddSingleton<ArchivePhotos>(provider => StoredPhotos.Of(provider.GetRequiredService<MediaStore>(), provider.GetRequiredService<PhotoIntake>()));
    }

    // The worker is this very program, run by the same dotnet; tests host it in a program of their own, so the path is not the process's.
    private static IReadOnlyList<string> WorkerCommand()
    {
        var program = Path.Combine(AppContext.BaseDirectory, "catalogue.dll");
        var dotnet = Environment.ProcessPath is { } path && Path.GetFileNameWithoutExtension(path) == "dotnet" ? path : "dotnet";
        return ["/usr/bin/env", dotnet, program, ImageWorker.Verb];
    }
}
