using System.CommandLine;
using System.Globalization;
using Catalogue.Data.Archives;
using Catalogue.Web.Hosting;

namespace Catalogue.Web.Verbs;

/// <summary><c>export</c>: writes whole teardowns as one archive.</summary>
internal static class ExportVerb
{
    public static Command Create()
    {
        var data = CatalogueCommand.DataOption();
        var file = new Argument<string>("FILE") { Description = "The archive to write; - for standard output." };
        var teardown = new Option<string[]>("--teardown") { Description = "The address of a teardown; may be given several times. All without it.", HelpName = "SLUG", DefaultValueFactory = _ => [] };
        var drafts = new Option<bool>("--drafts") { Description = "Put drafts in too." };
        var forOthers = new Option<bool>("--for-others") { Description = "The form to give away: public copies of the photos, no serial numbers, nothing that the lab keeps to itself." };
        var command = new Command("export", "Write whole teardowns, with families, makers and photos, as one archive.") { file, teardown, drafts, forOthers, data };
        command.SetAction((parsed, cancellation) => AdminSession.RunAsync(
            parsed.GetRequiredValue(data),
            (services, cancel) => RunAsync(
                services,
                parsed.GetRequiredValue(file),
                new ExportArchive.Request
                {
                    Teardowns = parsed.GetRequiredValue(teardown) is { Length: > 0 } slugs ? slugs : null,
                    WithDrafts = parsed.GetValue(drafts),
                    ForOthers = parsed.GetValue(forOthers),
                },
                cancel),
            cancellation));
        return command;
    }

    // Written beside and renamed, so that what has the name is whole.
    internal static async Task<int> RunAsync(IServiceProvider services, string file, ExportArchive.Request request, CancellationToken cancellationToken)
    {
        var isPipe = file == "-";
        var path = isPipe ? "" : Path.GetFullPath(file);
        var beside = $"{path}.{Environment.ProcessId}.part";
        Stream? target = null;
        try
        {
            var outcome = await services.GetRequiredService<ExportArchive>().RunAsync(
                request,
                services.GetRequiredService<ArchivePhotos>(),
                _ => Task.FromResult(target = isPipe ? Console.OpenStandardOutput() : new FileStream(beside, new FileStreamOptions { Mode = FileMode.Create, Access = FileAccess.Write, Options = FileOptions.Asynchronous, BufferSize = 1024 * 1024 })),
                (done, total, _) => Console.Error.WriteAsync(string.Create(CultureInfo.InvariantCulture, $"\r{done} of {total} teardowns")),
                cancellationToken);
            await Console.Error.WriteLineAsync();
            if (outcome is not ExportArchive.Outcome.Written written)
            {
                await Console.Error.WriteLineAsync(outcome is ExportArchive.Outcome.NotFound missing ? missing.Reason : ((ExportArchive.Outcome.NotYet)outcome).Reason);
                return 1;
            }

            await target!.DisposeAsync();
            if (!isPipe)
                File.Move(beside, path, overwrite: true);
            var counts = written.Manifest.Counts;
            await Console.Error.WriteLineAsync(string.Create(
                CultureInfo.InvariantCulture,
                $"{counts.GetValueOrDefault("teardown")} teardowns, {counts.GetValueOrDefault("revision")} revisions, {counts.GetValueOrDefault("component")} components, {counts.GetValueOrDefault("family")} families, {counts.GetValueOrDefault("photo_file")} photos."));
            if (written.PhotosMissing > 0)
                await Console.Error.WriteLineAsync($"The files of {written.PhotosMissing} photos are not in the media store; only their records are in the archive.");
            return 0;
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            await Console.Error.WriteLineAsync($"{file} cannot be written: {exception.Message}");
            return 1;
        }
        finally
        {
            if (target is not null)
            {
                await target.DisposeAsync();
                if (!isPipe)
                    File.Delete(beside);
            }
        }
    }
}
