using System.CommandLine;
using System.Globalization;
using Catalogue.Web.Hosting;
using Catalogue.Web.Imports;

namespace Catalogue.Web.Verbs;

/// <summary><c>import-article</c>: opens a draft from a Markdown article, alone or with its pictures.</summary>
internal static class ImportArticleVerb
{
    public static Command Create()
    {
        var data = CatalogueCommand.DataOption();
        var path = new Argument<string>("PATH") { Description = "A Markdown file, a folder with one and its pictures, or a zip file." };
        var dryRun = new Option<bool>("--dry-run") { Description = "Say what would become of the article and change nothing." };
        var options = ArticleChoices.Options.ToDictionary(option => option.Key, option => new Option<string?>($"--{option.Key}") { Description = $"Gives {option.Value}.", HelpName = "TEXT" });
        var fields = ArticleChoices.Fields.ToDictionary(field => field.Key, field => new Option<string?>($"--{field.Key}") { Description = $"As JSON: {field.Value}", HelpName = "JSON" });
        var command = new Command("import-article", "Open the draft of a teardown from a Markdown article; what the article does not say is asked for.") { path, dryRun, data };
        foreach (var option in options.Values.Concat(fields.Values))
            command.Add(option);
        command.SetAction((parsed, cancellation) => AdminSession.RunAsync(
            parsed.GetRequiredValue(data),
            async (services, cancel) =>
            {
                var given = options.Concat(fields).Select(option => KeyValuePair.Create(option.Key, parsed.GetValue(option.Value))).Where(pair => pair.Value is not null).ToDictionary(pair => pair.Key, pair => pair.Value!);
                if (ArticleChoices.TryParse(given, out var refusal) is not { } choices)
                    return await BundleVerbs.RefuseAsync(refusal!.Reason);
                var import = ActivatorUtilities.CreateInstance<ArticleImport>(services);
                var request = new ArticleImport.Request(Guid.CreateVersion7(), parsed.GetValue(dryRun), choices, BundleVerbs.Who);
                var name = parsed.GetRequiredValue(path);
                if (File.Exists(name) && !await IsZipAsync(name, cancel))
                    return await SayAsync(await import.RunAsync(await File.ReadAllBytesAsync(name, cancel), Path.GetFileName(name), request, BundleVerbs.ProgressAsync, cancel));
                return await BundleVerbs.WithBundleAsync(name, async bundle => await SayAsync(await import.RunAsync(bundle, request, BundleVerbs.ProgressAsync, cancel)));
            },
            cancellation));
        return command;
    }

    private static async Task<bool> IsZipAsync(string path, CancellationToken cancellationToken)
    {
        await using var file = File.OpenRead(path);
        var start = new byte[2];
        return await file.ReadAtLeastAsync(start, start.Length, throwOnEndOfStream: false, cancellationToken) == start.Length && start.AsSpan().SequenceEqual("PK"u8);
    }

    private static async Task<int> SayAsync(ImportOutcome outcome)
    {
        await Console.Error.WriteLineAsync();
        var (report, reason) = outcome switch
        {
            ImportOutcome.Done done => ((ArticleReport)done.Report, null),
            ImportOutcome.Refused refused => (refused.Report as ArticleReport, refused.Reason),
            _ => throw new InvalidOperationException("Every end of an import is known."),
        };
        if (report is not null)
        {
            await Console.Out.WriteLineAsync($"{report.Title ?? "no title"} ({report.Encoding}): {string.Join(", ", new[] { report.Brand, report.Name, report.Model }.OfType<string>())}");
            foreach (var section in report.Sections)
                await Console.Out.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"section {section.Index}: {Domain.Text.SnakeCase.Code(section.Kind)}, {section.Heading ?? "above the first heading"}, {section.Characters} characters"));
            foreach (var picture in report.Pictures)
                await Console.Out.WriteLineAsync($"picture {picture.Address}: {Domain.Text.SnakeCase.Code(picture.Outcome).Replace('_', ' ')}{(picture.Reason is { } why ? $". {why}" : "")}");
            foreach (var list in report.Lists)
                await Console.Out.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"list {list.Index}: {list.Rows} rows, {(list.Board is { } board ? $"onto {board}{(list.BoardSure ? "" : " (no heading names it)")}" : "stays in the text")}"));
            foreach (var warning in report.Warnings)
                await Console.Out.WriteLineAsync(warning);
        }

        if (reason is not null)
            return await BundleVerbs.RefuseAsync(reason);
        await Console.Out.WriteLineAsync(report!.Teardown is { } slug ? $"The draft is {slug}." : report.Missing.Count > 0 ? $"Missing: {string.Join(", ", report.Missing.Select(name => $"--{name}"))}." : "Nothing is missing.");
        return 0;
    }
}
