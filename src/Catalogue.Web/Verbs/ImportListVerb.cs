using System.CommandLine;
using System.Globalization;
using Catalogue.Data.Components;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Components.Lists;
using Catalogue.Domain.Text;
using Catalogue.Web.Api;
using Catalogue.Web.Hosting;
using Catalogue.Web.Imports;

namespace Catalogue.Web.Verbs;

/// <summary><c>import-list</c>: brings a component list into a board of a draft, or tells what would become of each row.</summary>
internal static class ImportListVerb
{
    public static Command Create()
    {
        var data = CatalogueCommand.DataOption();
        var slug = new Argument<string>("SLUG") { Description = "The teardown: the last part of its address." };
        var file = new Argument<string>("FILE") { Description = "A workbook (XLSX) or text with one line a part; - for standard input." };
        var board = new Option<string?>("--board") { Description = "Name of the board; needed where the teardown has several.", HelpName = "NAME" };
        var dryRun = new Option<bool>("--dry-run") { Description = "Tell what would happen and change nothing." };
        var sheet = new Option<string?>("--sheet") { Description = "The only sheet of a workbook to import, hidden or not.", HelpName = "NAME" };
        var encoding = new Option<string?>("--encoding") { Description = "Encoding of a text (an IANA name), where it was found wrongly.", HelpName = "NAME" };
        var delimiter = new Option<string?>("--delimiter") { Description = "The character between cells, or tab, where it was found wrongly.", HelpName = "CHAR" };
        var header = new Option<int?>("--header-line") { Description = "Number of the line that names the columns, from 1.", HelpName = "N" };
        var columns = new Option<string?>("--columns") { Description = "What columns hold: a JSON object from their names to meanings; remembered for lists with the same headers.", HelpName = "JSON" };
        var command = new Command("import-list", "Bring a component list into a board; the same list again changes nothing.") { slug, file, board, dryRun, sheet, encoding, delimiter, header, columns, data };
        command.SetAction((parsed, cancellation) => AdminSession.RunAsync(
            parsed.GetRequiredValue(data),
            async (services, cancel) =>
            {
                if (parsed.GetValue(delimiter) is { Length: not 1 } and not "tab")
                    return await BundleVerbs.RefuseAsync("--delimiter is one character, or tab.");
                if (!ListImportEndpoint.TryReadColumns(parsed.GetValue(columns), out var chosen, out var wrong))
                    return await BundleVerbs.RefuseAsync(wrong);
                var options = new ComponentListOptions(
                    PlainText.Clean(parsed.GetValue(encoding)),
                    parsed.GetValue(delimiter) is { } between ? between == "tab" ? '\t' : between[0] : null,
                    PlainText.Clean(parsed.GetValue(sheet)),
                    parsed.GetValue(header),
                    chosen);
                return await RunAsync(services, parsed.GetRequiredValue(slug), parsed.GetRequiredValue(file), parsed.GetValue(board), parsed.GetValue(dryRun), options, cancel);
            },
            cancellation));
        return command;
    }

    internal static async Task<int> RunAsync(IServiceProvider services, string slug, string file, string? board, bool dryRun, ComponentListOptions options, CancellationToken cancellationToken)
    {
        if (await services.GetRequiredService<TeardownRecordQuery>().LatestAsync(slug, cancellationToken) is not { } record)
            return await BundleVerbs.RefuseAsync($"There is no teardown “{slug}”.");
        var boards = record.Boards.Where(row => board is null || row.Name.Equals(board.Trim(), StringComparison.OrdinalIgnoreCase)).ToList();
        if (boards is not [var only])
        {
            return await BundleVerbs.RefuseAsync(record.Boards.Count == 0
                ? $"“{slug}” has no board yet."
                : $"Say which board with --board: {string.Join(", ", record.Boards.Select(row => $"“{row.Name}”"))}.");
        }

        byte[] content;
        try
        {
            content = file == "-" ? await ReadAsync(Console.OpenStandardInput(), cancellationToken) : await File.ReadAllBytesAsync(Path.GetFullPath(file), cancellationToken);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            return await BundleVerbs.RefuseAsync($"{file} cannot be read: {exception.Message}");
        }

        var outcome = await services.GetRequiredService<ImportComponents>().RunAsync(only.Id, content, file == "-" ? null : Path.GetFileName(file), dryRun, BundleVerbs.Who, options, cancellationToken);
        if (outcome is not ChangeOutcome<ImportComponents.Report>.Done { Value: var report })
            return await BundleVerbs.RefuseAsync(outcome.Reason());
        await TellAsync(report, dryRun);
        return 0;
    }

    private static async Task<byte[]> ReadAsync(Stream stream, CancellationToken cancellationToken)
    {
        using var content = new MemoryStream();
        await stream.CopyToAsync(content, cancellationToken);
        return content.ToArray();
    }

    private static async Task TellAsync(ImportComponents.Report report, bool dryRun)
    {
        foreach (var warning in report.Warnings)
            await Console.Out.WriteLineAsync(warning);
        foreach (var rejected in report.List.Rejected)
            await Console.Out.WriteLineAsync($"rejected\t{rejected.Place}\t{rejected.Reason}");
        foreach (var row in report.Plan.Rows)
        {
            await Console.Out.WriteLineAsync($"{SnakeCase.Code(row.Action)}\t{row.Row.Place}\t{row.Component.Name}\t{string.Join("; ", row.Changes.Select(change => $"{change.Field}: {change.From} becomes {change.To}").Concat(row.Kept.Select(kept => $"{kept.Field} stays {kept.From}, the list says {kept.To}")))}");
            foreach (var cell in CellReading.Of(row.Row, row.Value).Where(cell => cell.Problem is not null))
                await Console.Out.WriteLineAsync($"not read\t{row.Row.Place}\t{cell.Column}\t{cell.Text}: {cell.Problem}");
        }

        var (add, update, same) = (report.Count(PlannedRowAction.Add), report.Count(PlannedRowAction.Update), report.Count(PlannedRowAction.Same));
        await Console.Out.WriteLineAsync(string.Create(
            CultureInfo.InvariantCulture,
            $"{report.Rows} rows: {add} {(dryRun ? "would be added" : "added")}, {update} {(dryRun ? "would be changed" : "changed")}, {same} there already, {report.List.Rejected.Count} rejected; {report.Plan.Missing.Count} components of an earlier list not in this one."));
    }
}
