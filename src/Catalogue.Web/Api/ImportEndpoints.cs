using System.ComponentModel;
using System.Text.Json;
using Catalogue.Data.Accounts;
using Catalogue.Data.Imports;
using Catalogue.Domain.Imports;
using Catalogue.Domain.Text;
using Catalogue.Media.Imports;
using Catalogue.Web.Accounts;
using Catalogue.Web.Hosting;
using Catalogue.Web.Imports;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Mvc;

namespace Catalogue.Web.Api;

/// <summary>Imports as long work: a file is taken in, and what comes of it is asked for later.</summary>
internal static class ImportEndpoints
{
    private const string Wait = "wait";
    private const int LongestOption = 500;
    private static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(30);
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(200);

    /// <summary>An import run. Unknown is null: no report before the end, no total before it is known.</summary>
    public sealed record ImportRunAnswer(
        Guid Id,
        string Url,
        ImportKind Kind,
        string? FileName,
        IReadOnlyDictionary<string, string> Options,
        ImportState State,
        int PartsDone,
        int? PartsTotal,
        string? Reason,
        JsonElement? Report,
        string Who,
        DateTimeOffset AskedAt,
        DateTimeOffset? BegunAt,
        DateTimeOffset? EndedAt)
    {
        /// <summary>A run as the API gives it.</summary>
        public static ImportRunAnswer From(ImportRun run) => new(
            run.Id.Value, AddressOf(run.Id), run.Kind, run.FileName, Shortened(run.Options), run.State, run.PartsDone, run.PartsTotal == 0 ? null : run.PartsTotal, run.Reason, run.Report, run.Who, run.AskedAt, run.BegunAt, run.EndedAt);
    }

    // What came in fields may be long; whoever sent it has it.
    private static IReadOnlyDictionary<string, string> Shortened(IReadOnlyDictionary<string, string> options) =>
        options.Values.All(text => text.Length <= LongestOption) ? options : options.ToDictionary(option => option.Key, option => option.Value.Length <= LongestOption ? option.Value : $"{option.Value[..LongestOption]}…");

    public static void MapImports(this RouteGroupBuilder api)
    {
        var imports = api.MapGroup("imports").WithTags("imports");
        imports.MapPost("{kind}", ImportAsync)
            .RequireAuthorization(Policies.WriteToken)
            .WithMetadata(new DisableRequestSizeLimitAttribute())
            .WithSummary("Takes a file (field file) in and queues its import; the options of its kind go into the query. The answer says where to ask what came of it; wait=true waits for the end, 30 s at most.")
            .Accepts<IFormFile>("multipart/form-data")
            .Produces<ImportRunAnswer>(StatusCodes.Status202Accepted)
            .Produces<ImportRunAnswer>();
        imports.MapGet("{id:guid}", GetAsync).RequireAuthorization(Policies.AnyToken).WithSummary("An import run: its state (waiting, running, done, refused, failed), how far it is, and its report.").Produces<ImportRunAnswer>();
        imports.MapGet("", ListAsync).RequireAuthorization(Policies.AnyToken).WithSummary("The last import runs that this token asked for, newest first.").Produces<TeardownEndpoints.List<ImportRunAnswer>>();
    }

    /// <summary>The same for people in the lab.</summary>
    public static void MapImportForPeople(this RouteGroupBuilder lab) => lab.MapPost("import/runs/{kind}", ImportAsync).WithMetadata(new DisableRequestSizeLimitAttribute());

    private static async Task<IResult> ImportAsync(
        string kind, HttpContext http, ImportRunner runner, ImportRuns runs, StagedFiles files, TimeProvider clock, CancellationToken cancel, [FromQuery, Description("True to answer when the import has ended, after 30 s at most.")] bool wait = false)
    {
        if (SnakeCase.TryParse<ImportKind>(kind) is not { } known || runner.WorkerOf(known) is not { } worker)
            return ApiProblem.Of(StatusCodes.Status404NotFound, $"Nothing of the kind “{kind}” can be imported; there is: {string.Join(", ", runner.Kinds.Select(SnakeCase.Code))}.", "kind");
        if (ReadOptions(http.Request.Query, worker, out var options) is { } refused)
            return refused;
        var role = Roles.All.LastOrDefault(http.User.IsInRole);
        if (await worker.CheckAsync(options, role, cancel) is { } refusal)
            return ApiProblem.Of(StatusCodes.Status422UnprocessableEntity, refusal.Reason, refusal.Field);
        // A little more than the file: the form around it.
        var bodyLimit = worker.MaxFileBytes + (1024 * 1024);
        if (UploadEndpoints.TooLong(http, bodyLimit))
            return TooLarge(worker);
        if (http.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } size)
            size.MaxRequestBodySize = bodyLimit;
        var upload = await UploadedFile.OpenAsync(http.Request, worker.Fields.Keys, cancel);
        if (upload.Problem is { } problem)
            return problem;
        foreach (var (name, text) in upload.Fields)
            options[name] = PlainText.Clean(text) ?? "";
        if (upload.Fields.Count > 0 && await worker.CheckAsync(options, role, cancel) is { } late)
            return ApiProblem.Of(StatusCodes.Status422UnprocessableEntity, late.Reason, late.Field);

        files.RemoveOlder(clock.GetUtcNow() - StagedFiles.KeptFor);
        var id = ImportRunId.New();
        if (await files.ReceiveAsync(id.Value, upload.Stream!, worker.MaxFileBytes, cancel) is not { } bytes)
            return TooLarge(worker);
        if (bytes == 0)
        {
            files.Remove(id.Value);
            return ApiProblem.Of(StatusCodes.Status400BadRequest, "The file is empty.", "file");
        }

        var run = await runs.OpenAsync(new ImportRuns.Request(id, known, upload.FileName, options, http.User.ToEditor(), role), cancel);
        if (wait)
            run = await WaitAsync(run, runs, clock, cancel);
        return run.HasEnded ? TypedResults.Ok(ImportRunAnswer.From(run)) : TypedResults.Accepted(AddressOf(id), ImportRunAnswer.From(run));
    }

    private static async Task<IResult> GetAsync(Guid id, ImportRuns runs, CancellationToken cancel) =>
        await runs.FindAsync(ImportRunId.From(id), cancel) is { } run
            ? TypedResults.Ok(ImportRunAnswer.From(run))
            : ApiProblem.Of(StatusCodes.Status404NotFound, $"There is no import run {id}.");

    private static async Task<IResult> ListAsync(HttpContext http, ImportRuns runs, CancellationToken cancel, [FromQuery] int limit = 20) =>
        limit is >= 1 and <= ImportRuns.MaxListed
            ? TypedResults.Ok(new TeardownEndpoints.List<ImportRunAnswer>([.. (await runs.LastOfAsync(http.User.ToEditor(), limit, cancel)).Select(ImportRunAnswer.From)], null))
            : ApiProblem.Of(StatusCodes.Status400BadRequest, $"limit is a number from 1 to {ImportRuns.MaxListed}.", "limit");

    private static IResult? ReadOptions(IQueryCollection query, IImportWorker worker, out Dictionary<string, string> options)
    {
        options = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var (name, values) in query.Where(pair => pair.Key != Wait))
        {
            if (!worker.Options.ContainsKey(name))
            {
                return ApiProblem.Of(
                    StatusCodes.Status400BadRequest, $"“{name}” is no option of {SnakeCase.Code(worker.Kind)}; there is: {string.Join(", ", worker.Options.Keys.Append(Wait))}.", name);
            }

            if (values.Count != 1 || PlainText.HoldsForbidden(values[0]) || values[0]!.Length > LongestOption)
                return ApiProblem.Of(StatusCodes.Status400BadRequest, $"“{name}” is given once, with at most {LongestOption} characters: {worker.Options[name]}", name);
            options[name] = values[0]!;
        }

        return null;
    }

    private static async Task<ImportRun> WaitAsync(ImportRun run, ImportRuns runs, TimeProvider clock, CancellationToken cancel)
    {
        var until = clock.GetUtcNow() + LongestWait;
        while (!run.HasEnded && clock.GetUtcNow() < until)
        {
            await Task.Delay(Pause, clock, cancel);
            run = await runs.FindAsync(run.Id, cancel) ?? run;
        }

        return run;
    }

    private static IResult TooLarge(IImportWorker worker) =>
        ApiProblem.Of(StatusCodes.Status413PayloadTooLarge, $"A file of this kind has at most {worker.MaxFileBytes / (1024 * 1024)} MiB.", "file");

    private static string AddressOf(ImportRunId id) => $"{ApiEndpoints.Prefix}/imports/{id}";
}
