using System.CommandLine;
using System.Globalization;
using Catalogue.Web.Hosting;
using Catalogue.Web.Imports;

namespace Catalogue.Web.Verbs;

/// <summary><c>import-photos</c>: brings the pictures of a folder or a zip file into the draft of a teardown. Run again after a break it goes on.</summary>
internal static class ImportPhotosVerb
{
    public static Command Create()
    {
        var data = CatalogueCommand.DataOption();
        var slug = new Argument<string>("SLUG") { Description = "The teardown: the last part of its address." };
        var path = new Argument<string>("PATH") { Description = "A folder with pictures, or a zip file." };
        var dryRun = new Option<bool>("--dry-run") { Description = "Say what would become of each file and change nothing." };
        var places = new Option<string?>("--places") { Description = "A JSON file that gives places to pictures by their paths, in the form of the API.", HelpName = "FILE" };
        var command = new Command("import-photos", "Bring many pictures into a teardown; where each belongs is taken from its name and its folders.") { slug, path, dryRun, places, data };
        command.SetAction((parsed, cancellation) => AdminSession.RunAsync(
            parsed.GetRequiredValue(data),
            async (services, cancel) =>
            {
                var given = parsed.GetValue(places) is { } file ? await File.ReadAllTextAsync(file, cancel) : null;
                if (PhotoCorrections.TryParse(given, out var refusal) is not { } corrections)
                    return await BundleVerbs.RefuseAsync(refusal!.Reason);
                var import = ActivatorUtilities.CreateInstance<PhotosImport>(services);
                var request = new PhotosImport.Request(
                    parsed.GetRequiredValue(slug), parsed.GetValue(dryRun), corrections, BundleVerbs.Who, services.GetRequiredService<TimeProvider>().GetUtcNow());
                return await BundleVerbs.WithBundleAsync(
                    parsed.GetRequiredValue(path),
                    async bundle => await import.RunAsync(bundle, request, BundleVerbs.ProgressAsync, cancel) switch
                    {
                        ImportOutcome.Done { Report: PhotosReport report } => await SayAsync(report),
                        ImportOutcome.Refused refused => await BundleVerbs.RefuseAsync(refused.Reason),
                        _ => throw new InvalidOperationException("Every end of an import is known."),
                    });
            },
            cancellation));
        return command;
    }

    // One line a file, the unsure ones marked; 0 also where some files were no pictures, since folders hold all kinds of things.
    private static async Task<int> SayAsync(PhotosReport report)
    {
        await Console.Error.WriteLineAsync();
        foreach (var warning in report.Warnings)
            await Console.Out.WriteLineAsync(warning);
        foreach (var entry in report.Entries)
            await Console.Out.WriteLineAsync($"{Domain.Text.SnakeCase.Code(entry.Outcome),-13} {entry.Path}{(entry.Place is { } place ? $": {Words(place)}" : "")}{(entry.Sure is false ? " (unsure)" : "")}{(entry.Reason is { } reason ? $". {reason}" : "")}");
        await Console.Out.WriteLineAsync(string.Create(
            CultureInfo.InvariantCulture,
            $"{report.Added} {(report.DryRun ? "would be added" : "added")}, {report.AlreadyThere} already there, {report.Refused} refused, {report.Skipped} passed over."));
        return 0;
    }

    private static string Words(PhotosReport.Place place) => string.Join(", ", new[]
    {
        Domain.Text.SnakeCase.Code(place.Subject).Replace('_', ' ') + (place.Step is { } step ? string.Create(CultureInfo.InvariantCulture, $" {step}") : ""),
        place.BoardName ?? (place.NewBoard is { } made ? $"new board {made}" : null),
        place.Caption,
    }.OfType<string>());
}
