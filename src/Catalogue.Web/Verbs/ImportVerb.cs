using System.CommandLine;
using System.Globalization;
using Catalogue.Data.Archives;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Text;
using Catalogue.Web.Hosting;

namespace Catalogue.Web.Verbs;

/// <summary><c>import</c>: brings an archive in, or tells what would happen.</summary>
internal static class ImportVerb
{
    public static Command Create()
    {
        var data = CatalogueCommand.DataOption();
        var file = new Argument<string>("FILE") { Description = "An archive of teardowns, as export writes it." };
        var dryRun = new Option<bool>("--dry-run") { Description = "Tell what would happen and change nothing." };
        var keep = new Option<bool>("--keep-published") { Description = "Bring published revisions in as published, also another lab's; without it those arrive as drafts for review." };
        var command = new Command("import", "Bring in an archive of teardowns.") { file, dryRun, keep, data };
        command.SetAction((parsed, cancellation) => AdminSession.RunAsync(
            parsed.GetRequiredValue(data),
            (services, cancel) => RunAsync(services, parsed.GetRequiredValue(file), parsed.GetValue(dryRun), parsed.GetValue(keep), cancel),
            cancellation));
        return command;
    }

    internal static async Task<int> RunAsync(IServiceProvider services, string file, bool dryRun, bool keepPublished, CancellationToken cancellationToken)
    {
        try
        {
            await using var content = new FileStream(Path.GetFullPath(file), new FileStreamOptions { Options = FileOptions.Asynchronous, BufferSize = 1024 * 1024 });
            var outcome = await services.GetRequiredService<ImportArchive>().RunAsync(
                content,
                new ImportArchive.Request(new Editor("admin command", IsPerson: false), dryRun, keepPublished, MayPublish: true),
                services.GetRequiredService<ArchivePhotos>(),
                (done, total, _) => Console.Error.WriteAsync(string.Create(CultureInfo.InvariantCulture, $"\r{done} of {total}")),
                cancellationToken);
            await Console.Error.WriteLineAsync();
            if (outcome is ImportArchive.Outcome.Refused refused)
            {
                await Console.Error.WriteLineAsync(refused.Reason);
                return 1;
            }

            await TellAsync(((ImportArchive.Outcome.Done)outcome).Report);
            return 0;
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            await Console.Error.WriteLineAsync($"{file} cannot be read: {exception.Message}");
            return 1;
        }
    }

    private static async Task TellAsync(ArchiveReport report)
    {
        foreach (var item in report.Teardowns)
        {
            await Console.Out.WriteLineAsync($"{SnakeCase.Code(item.Action)}\t{item.Slug}\t{item.Address}");
            foreach (var text in item.Notes.Concat(item.History))
                await Console.Out.WriteLineAsync($"\t{text}");
        }

        foreach (var (name, matched) in new[] { ("families", report.Families), ("makers", report.Makers) })
        {
            await Console.Out.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"{name}: {matched.New} new, {matched.Same} the same, {matched.Differing} differing"));
            foreach (var text in matched.Differences.Concat(matched.Conflicts))
                await Console.Out.WriteLineAsync($"\t{text}");
        }

        await Console.Out.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"photos: {report.Photos.New} new, {report.Photos.Known} here, {report.Photos.Missing} missing in the archive"));
        await Console.Out.WriteLineAsync(report.DryRun || report.Teardowns.All(item => item.Action is not ArchiveReport.Action.New) ? "No teardown was brought in." : report.KeepsPublished ? "Published revisions arrived as published." : "The teardowns arrived as drafts for review.");
    }
}
