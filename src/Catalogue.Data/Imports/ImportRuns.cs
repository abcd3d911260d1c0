using System.Text.Json;
using Catalogue.Data.Conversions;
using Catalogue.Data.Queue;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Imports;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Imports;

/// <summary>
/// Import runs from the asking to the end. A run and its job in the queue are written together; a run that has ended never changes again, so a worker that lost
/// its lease cannot overwrite what another one brought to an end.
/// </summary>
/// <param name="contexts">Makes the context of each step.</param>
/// <param name="clock">Tells the time.</param>
public sealed class ImportRuns(IDbContextFactory<CatalogueContext> contexts, TimeProvider clock)
{
    /// <summary>The kind of the job that runs an import; its subject is the run's id.</summary>
    public const string JobKind = "import";

    /// <summary>The most runs of a list.</summary>
    public const int MaxListed = 100;

    /// <summary>What is asked for.</summary>
    /// <param name="Id">The id under which the file was staged.</param>
    /// <param name="Kind">What it brings in.</param>
    /// <param name="FileName">The file's name as it came, or null.</param>
    /// <param name="Options">What was asked for, by the names that the kind knows.</param>
    /// <param name="Who">Who asks.</param>
    /// <param name="Role">The strongest role of a person; null for a script.</param>
    public sealed record Request(ImportRunId Id, ImportKind Kind, string? FileName, IReadOnlyDictionary<string, string> Options, Editor Who, string? Role);

    /// <summary>Opens a run and puts it into the queue. Its file is staged by then.</summary>
    public async Task<ImportRun> OpenAsync(Request request, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(request);
        var now = clock.GetUtcNow();
        var run = new ImportRun
        {
            Id = request.Id,
            Kind = request.Kind,
            FileName = request.FileName,
            Options = request.Options,
            State = ImportState.Waiting,
            Who = request.Who.Name,
            Role = request.Role,
            AskedAt = now,
        };
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
        context.ImportRuns.Add(run);
        await context.SaveChangesAsync(cancellationToken);
        await JobQueue.EnqueueAsync(context, JobKind, run.Id.ToString(), now, cancellationToken);
        await transaction.CommitAsync(cancellationToken);
        return run;
    }

    /// <summary>A run, or null.</summary>
    public async Task<ImportRun?> FindAsync(ImportRunId id, CancellationToken cancellationToken = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await context.ImportRuns.AsNoTracking().SingleOrDefaultAsync(row => row.Id == id, cancellationToken);
    }

    /// <summary>The last runs that somebody asked for, newest first.</summary>
    /// <param name="who">Who; a person and a script of one name are two.</param>
    /// <param name="limit">How many, 1 to <see cref="MaxListed"/>.</param>
    /// <param name="cancellationToken">Cancels the query.</param>
    public async Task<IReadOnlyList<ImportRun>> LastOfAsync(Editor who, int limit, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(who);
        ArgumentOutOfRangeException.ThrowIfNotEqual(limit, Math.Clamp(limit, 1, MaxListed));
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await context.ImportRuns.AsNoTracking().Where(row => row.Who == who.Name && (row.Role != null) == who.IsPerson).OrderByDescending(row => row.Id).Take(limit).ToListAsync(cancellationToken);
    }

    /// <summary>Begins a run, or begins it again; null when there is none that is still to be run.</summary>
    public async Task<ImportRun?> BeginAsync(ImportRunId id, CancellationToken cancellationToken = default)
    {
        var now = clock.GetUtcNow();
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        var begun = await Open(context, id).ExecuteUpdateAsync(
            set => set
                .SetProperty(row => row.State, ImportState.Running).SetProperty(row => row.BegunAt, now).SetProperty(row => row.Reason, (string?)null)
                .SetProperty(row => row.PartsDone, 0).SetProperty(row => row.PartsTotal, 0),
            cancellationToken);
        return begun == 0 ? null : await context.ImportRuns.AsNoTracking().SingleAsync(row => row.Id == id, cancellationToken);
    }

    /// <summary>Says how far a run has come.</summary>
    public async Task ReportAsync(ImportRunId id, int done, int total, CancellationToken cancellationToken = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await Open(context, id).ExecuteUpdateAsync(set => set.SetProperty(row => row.PartsDone, done).SetProperty(row => row.PartsTotal, total), cancellationToken);
    }

    /// <summary>Says that a run met a fault of the machine and will be begun again.</summary>
    public async Task PutBackAsync(ImportRunId id, string reason, CancellationToken cancellationToken = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await Open(context, id).ExecuteUpdateAsync(set => set.SetProperty(row => row.State, ImportState.Waiting).SetProperty(row => row.Reason, Cut(reason)), cancellationToken);
    }

    /// <summary>Brings a run to its end.</summary>
    /// <param name="id">The run.</param>
    /// <param name="end">One of the states that are ends.</param>
    /// <param name="reason">Why it was refused or failed, or null.</param>
    /// <param name="report">What came of it, written as JSON with the names of the API, or null.</param>
    /// <param name="cancellationToken">Cancels it.</param>
    /// <returns>False when it had ended before; it stays as it was then.</returns>
    public async Task<bool> FinishAsync(ImportRunId id, ImportState end, string? reason, object? report, CancellationToken cancellationToken = default)
    {
        if (end is ImportState.Waiting or ImportState.Running)
            throw new ArgumentOutOfRangeException(nameof(end), end, "A run ends as done, refused or failed.");
        var now = clock.GetUtcNow();
        JsonElement? json = report is null ? null : JsonSerializer.SerializeToElement(report, StoredJson.Options);
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await Open(context, id).ExecuteUpdateAsync(
            set => set
                .SetProperty(row => row.State, end).SetProperty(row => row.Reason, reason == null ? null : Cut(reason)).SetProperty(row => row.Report, json).SetProperty(row => row.EndedAt, now),
            cancellationToken) > 0;
    }

    private static IQueryable<ImportRun> Open(CatalogueContext context, ImportRunId id) =>
        context.ImportRuns.Where(row => row.Id == id && (row.State == ImportState.Waiting || row.State == ImportState.Running));

    private static string Cut(string reason) => Domain.Text.PlainText.Clean(reason[..Math.Min(reason.Length, ImportRun.MaxReasonLength)]) ?? "No reason was given.";
}
