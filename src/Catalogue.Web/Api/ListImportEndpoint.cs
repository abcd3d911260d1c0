using System.ComponentModel;
using System.Text.Json;
using Catalogue.Data.Components;
using Catalogue.Data.Conversions;
using Catalogue.Domain.Components;
using Catalogue.Domain.Components.Lists;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Teardowns;
using Catalogue.Domain.Text;
using Catalogue.Web.Accounts;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Net.Http.Headers;

namespace Catalogue.Web.Api;

/// <summary>Component lists, as files. The API and the lab take them through the same code.</summary>
internal static class ListImportEndpoint
{
    // A little above the reader's own cap, so that its words are heard and not the server's.
    private const long BodyLimit = ComponentList.MaxFileBytes + (1024 * 1024);

    private static readonly string[] TextTypes = ["text/plain", "text/csv", "text/tab-separated-values", "text/markdown"];

    /// <summary>What an import did, or would do.</summary>
    public sealed record ImportReport
    {
        [Description("Part lines: the imported and the rejected ones.")]
        public required int Rows { get; init; }

        [Description("How many are taken over: added, updated, or there already.")]
        public required int Imported { get; init; }

        [Description("How many become new components.")]
        public required int Added { get; init; }

        [Description("How many change the component that they became earlier, or that stands at their designators.")]
        public required int Updated { get; init; }

        [Description("How many are word for word what was imported before; nothing is done.")]
        public required int Unchanged { get; init; }

        [Description("Part lines that could not be taken over.")]
        public required IReadOnlyList<RejectedRow> Rejected { get; init; }

        [Description("Cells that could not be read, though their row is taken over; their text is kept.")]
        public required IReadOnlyList<RejectedCell> RejectedCells { get; init; }

        [Description("What a person should know, with rows and sheets.")]
        public required IReadOnlyList<string> Warnings { get; init; }

        [Description("The columns as they were understood.")]
        public required IReadOnlyList<ImportColumn> Columns { get; init; }

        [Description("IANA name of the encoding; null for a workbook.")]
        public required string? Encoding { get; init; }

        [Description("The character between fields; null for a workbook.")]
        public required string? Delimiter { get; init; }

        [Description("What became of each sheet; empty for a text.")]
        public required IReadOnlyList<ImportSheet> Sheets { get; init; }

        [Description("Cells that may be read in more than one way and wait for a person.")]
        public required IReadOnlyList<OpenReading> Readings { get; init; }

        [Description("How many of the imported lead to a part family.")]
        public required int Resolved { get; init; }

        [Description("Components of earlier imports that no row meets; they stay.")]
        public required IReadOnlyList<ImportMissing> Missing { get; init; }

        [Description("What becomes of each row, in the list's order.")]
        public required IReadOnlyList<ImportLine> Lines { get; init; }

        [Description("True where nothing was changed.")]
        public required bool DryRun { get; init; }
    }

    /// <summary>What a caller decided about a list; null means: find out from the content.</summary>
    /// <param name="DryRun">True to tell what would happen and change nothing.</param>
    /// <param name="Sheet">The only sheet of a workbook to import, hidden or not.</param>
    /// <param name="Encoding">IANA name of a text's encoding, where the guess was wrong.</param>
    /// <param name="Delimiter">The character between fields, or <c>tab</c>, where the guess was wrong.</param>
    /// <param name="HeaderLine">Number of the line that names the columns, from 1.</param>
    /// <param name="Columns">What columns hold: a JSON object from names to meanings.</param>
    public sealed record ImportChoices(
        [property: FromQuery(Name = "dry_run")] bool DryRun = false,
        [property: FromQuery(Name = "sheet")] string? Sheet = null,
        [property: FromQuery(Name = "encoding")] string? Encoding = null,
        [property: FromQuery(Name = "delimiter")] string? Delimiter = null,
        [property: FromQuery(Name = "header_line")] int? HeaderLine = null,
        [property: FromQuery(Name = "columns")] string? Columns = null);

    /// <summary>A cell that could not be read.</summary>
    public sealed record RejectedCell(int Row, string? Sheet, string Column, string Text, string Reason);

    /// <summary>What became of a sheet.</summary>
    /// <param name="Name">Its name.</param>
    /// <param name="Rows">Part lines in it.</param>
    /// <param name="Hidden">True where the workbook does not show it.</param>
    /// <param name="Imported">True where its rows are among those of the answer.</param>
    /// <param name="Reason">Why it was not imported; null where it was.</param>
    public sealed record ImportSheet(string Name, int Rows, bool Hidden, bool Imported, string? Reason);

    /// <summary>A column as it was understood.</summary>
    public sealed record ImportColumn(string Header, ColumnMeaning? Meaning);

    /// <summary>A component of an earlier import that no row meets.</summary>
    public sealed record ImportMissing(Guid Component, string Name);

    /// <summary>What becomes of a row.</summary>
    public sealed record ImportLine(
        int Row,
        string? Sheet,
        PlannedRowAction Action,
        [property: Description("The component it is or becomes; null in a dry run where it is new.")] Guid? Component,
        string Name,
        bool Fitted,
        [property: Description("The family that its part number leads to; its slug is null where it is opened by the import.")] ImportFamily? Family,
        IReadOnlyList<ImportCell> Cells,
        IReadOnlyList<ImportRating> Ratings,
        IReadOnlyList<ImportField> Changes,
        [property: Description("Fields in which a person's word stands although the list says something else.")] IReadOnlyList<ImportField> Kept,
        IReadOnlyList<string> Remarks);

    /// <summary>A family.</summary>
    public sealed record ImportFamily(string? Slug, string Name);

    /// <summary>A cell and how it was understood; reading is null where the text itself is taken.</summary>
    public sealed record ImportCell(string Column, ColumnMeaning Meaning, string Text, string? Reading, string? Problem);

    /// <summary>A rating that the row states, and what becomes of it; values in the unit of the kind.</summary>
    public sealed record ImportRating(PlannedRatingAction Action, RatingKind Kind, Unit Unit, double Low, double Nominal, double High, string? Condition, string Text);

    /// <summary>A field, what stands there and what the list says.</summary>
    public sealed record ImportField(string Field, string? From, string? To);

    public static void MapListImport(this RouteGroupBuilder api) =>
        api.MapGroup("").RequireAuthorization(Policies.WriteToken).WithTags("records").MapPost("boards/{id:guid}/components/import", ImportAsync)
            .WithMetadata(new RequestSizeLimitAttribute(BodyLimit))
            .WithSummary("Imports a component list (field file: CSV, TSV or other separated text, or an XLSX workbook); dry_run=true tells what would happen.")
            .WithDescription(
                "Rows meet the components that they became earlier by their designators, so that the same list again changes nothing and a corrected one updates; what a person wrote since stays. "
                + "Of a workbook all visible sheets with a header are imported, or the one that the parameter sheet names, hidden or not. "
                + "The parameter columns is a JSON object from column names to meanings (null keeps the cells only), remembered for lists with the same headers; an empty object forgets it. "
                + "header_line, encoding and delimiter decide what was found wrongly. Values and ratings that are read become ratings with the list as their source. "
                + "readings lists cells that may be read in more than one way, such as a part number that a spreadsheet turned into a date: they are left open. "
                + "Text without a file name, such as rows pasted from a spreadsheet or a Markdown table, may be the body itself.")
            .Accepts<IFormFile>("multipart/form-data", TextTypes)
            .Produces<ImportReport>();

    /// <summary>The same for people in the lab.</summary>
    public static void MapLabListImport(this RouteGroupBuilder lab) =>
        lab.MapPost("import/{id:guid}", ImportAsync).WithMetadata(new RequestSizeLimitAttribute(BodyLimit));

    private static async Task<IResult> ImportAsync(Guid id, HttpContext http, ImportComponents import, [AsParameters] ImportChoices choices, CancellationToken cancel)
    {
        if (choices.Delimiter is { Length: > 1 } and not "tab")
            return ApiProblem.Of(StatusCodes.Status400BadRequest, $"delimiter is one character, or tab; it was “{choices.Delimiter}”.", "delimiter");
        if (!TryReadColumns(choices.Columns, out var columns, out var wrong))
            return ApiProblem.Of(StatusCodes.Status400BadRequest, wrong, "columns");
        if (UploadEndpoints.TooLong(http, BodyLimit))
            return ApiProblem.Of(StatusCodes.Status413PayloadTooLarge, $"A component list has at most {ComponentList.MaxFileBytes / (1024 * 1024)} MiB.");
        var isText = MediaTypeHeaderValue.TryParse(http.Request.ContentType, out var type) && TextTypes.Contains(type.MediaType.Value, StringComparer.OrdinalIgnoreCase);
        var upload = isText ? new UploadedFile(http.Request.Body, null, null, new Dictionary<string, string>()) : await UploadedFile.OpenAsync(http.Request, cancel);
        if (upload.Problem is { } problem)
            return problem;
        var options = new ComponentListOptions(
            Given(choices.Encoding) ?? (isText ? Given(HeaderUtilities.RemoveQuotes(type!.Charset).Value) : null),
            choices.Delimiter is { Length: > 0 } delimiter ? delimiter == "tab" ? '\t' : delimiter[0] : null,
            Given(choices.Sheet),
            choices.HeaderLine,
            columns);
        using var content = new MemoryStream();
        await upload.Stream!.CopyToAsync(content, cancel);
        var outcome = await import.RunAsync(BoardId.From(id), content.ToArray(), upload.FileName, choices.DryRun, http.User.ToEditor(), options, cancel);
        return outcome.ToResult(report => TypedResults.Ok(Json(report, choices.DryRun)));

        static string? Given(string? text) => string.IsNullOrWhiteSpace(text) ? null : text;
    }

    /// <summary>Reads what a caller said of columns; false with the reason where it is no such object.</summary>
    internal static bool TryReadColumns(string? text, out IReadOnlyDictionary<string, ColumnMeaning?>? columns, out string problem)
    {
        (columns, problem) = (null, $"columns is a JSON object from column names to one of {string.Join(", ", SnakeCase.All<ColumnMeaning>())} or null.");
        if (text is null)
            return true;
        try
        {
            columns = JsonSerializer.Deserialize<Dictionary<string, ColumnMeaning?>>(text, StoredJson.Options);
            return columns is not null;
        }
        catch (JsonException)
        {
            return false;
        }
    }

    private static ImportReport Json(ImportComponents.Report report, bool dryRun)
    {
        var lines = report.Plan.Rows.Select(row => Line(report, row, dryRun)).ToList();
        return new ImportReport
        {
            Rows = report.Rows,
            Imported = report.Imported,
            Added = report.Count(PlannedRowAction.Add),
            Updated = report.Count(PlannedRowAction.Update),
            Unchanged = report.Count(PlannedRowAction.Same),
            Rejected = report.List.Rejected,
            RejectedCells = [.. lines.SelectMany(line => line.Cells.Where(cell => cell.Problem is not null).Select(cell => new RejectedCell(line.Row, line.Sheet, cell.Column, cell.Text, cell.Problem!)))],
            Warnings = report.Warnings,
            Columns = [.. report.List.Columns.Select(column => new ImportColumn(column.Key, column.Meaning))],
            Encoding = report.List.Encoding,
            Delimiter = report.List.Delimiter?.ToString(),
            Sheets = [.. report.List.Sheets.Select(found => new ImportSheet(found.Name, found.Rows, found.IsHidden, found.NotImported is null, found.NotImported))],
            Readings = report.List.Readings,
            Resolved = report.Resolved,
            Missing = [.. report.Plan.Missing.Select(component => new ImportMissing(component.Id.Value, component.Name))],
            Lines = lines,
            DryRun = dryRun,
        };
    }

    private static ImportLine Line(ImportComponents.Report report, PlannedRow row, bool dryRun) => new(
        row.Row.LineNumber,
        row.Row.Sheet,
        row.Action,
        dryRun && row.Action is PlannedRowAction.Add ? null : row.Component.Id.Value,
        row.Component.Name,
        row.Component.IsFitted,
        report.FamilyOf(row) is { } family ? new ImportFamily(family.Slug, family.Name) : null,
        [.. CellReading.Of(row.Row, row.Value).Select(cell => new ImportCell(cell.Column, cell.Meaning, cell.Text, cell.Reading, cell.Problem))],
        [.. row.Ratings.Select(Rating)],
        [.. row.Changes.Select(Field)],
        [.. row.Kept.Select(Field)],
        row.Row.Warnings.Count == 0 && row.Value.Reading.Warnings.Count == 0 ? [] : [.. row.Row.Warnings.Concat(row.Value.Reading.Warnings).Distinct(StringComparer.Ordinal)]);

    private static ImportRating Rating(PlannedRating rating)
    {
        var (kind, value, condition) = rating.Now is { } now ? (now.Kind, now.Value, now.Condition) : (rating.There!.Kind, rating.There.Interval, rating.There.Condition);
        return new ImportRating(rating.Action, kind, kind.Unit(), value.Low, value.Nominal, value.High, condition, $"{kind.Word()} {QuantityText.Of(value, kind.Unit())}{(condition is null ? "" : $", {condition}")}");
    }

    private static ImportField Field(PlannedField field) => new(JsonNamingPolicy.SnakeCaseLower.ConvertName(field.Field), field.From, field.To);
}
