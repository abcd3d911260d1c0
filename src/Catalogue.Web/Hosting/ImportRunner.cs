using Catalogue.Data.Imports;
using Catalogue.Data.Queue;
using Catalogue.Domain.Imports;
using Catalogue.Media.Imports;
using Catalogue.Web.Imports;

namespace Catalogue.Web.Hosting;

/// <summary>
/// Runs one import from the queue: finds the worker of its kind, holds the job while it works, and brings the run to its end. A worker that finds that the job is
/// no longer its own stops at once.
/// </summary>
/// <param name="runs">The runs.</param>
/// <param name="files">The staged files.</param>
/// <param name="queue">The queue.</param>
/// <param name="workers">One worker a kind.</param>
/// <param name="clock">Tells the time.</param>
/// <param name="log">The log.</param>
internal sealed class ImportRunner(ImportRuns runs, StagedFiles files, JobQueue queue, IEnumerable<IImportWorker> workers, TimeProvider clock, ILogger<ImportRunner> log)
{
    private static readonly TimeSpan HoldEvery = JobQueue.Lease / 4;

    private readonly Dictionary<ImportKind, IImportWorker> _workers = workers.ToDictionary(worker => worker.Kind);

    /// <summary>The worker of a kind, or null when this version has none.</summary>
    public IImportWorker? WorkerOf(ImportKind kind) => _workers.GetValueOrDefault(kind);

    /// <summary>The kinds that have a worker.</summary>
    public IEnumerable<ImportKind> Kinds => _workers.Keys.Order();

    /// <summary>Runs the import of a job.</summary>
    /// <returns>Null when there is nothing left to do for the job, or why it is to be tried again.</returns>
    public async Task<string?> RunAsync(Job job, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(job);
        if (!Guid.TryParse(job.Subject, out var value))
            return "The job names no import run.";
        var id = ImportRunId.From(value);
        // Begun more often than it could fail by saying so: the process ended each time.
        if (job.Attempts > JobQueue.MaxAttempts)
            return await EndAsync(id, ImportState.Failed, "Each attempt ended with the whole program; the file may need more memory than there is.", null, cancellationToken);
        if (await runs.BeginAsync(id, cancellationToken) is not { } run)
            return null;
        if (WorkerOf(run.Kind) is not { } worker)
            return await EndAsync(id, ImportState.Failed, "This version cannot bring in files of that kind.", null, cancellationToken);
        await using var file = files.Open(value);
        if (file is null)
            return await EndAsync(id, ImportState.Refused, "The file is no longer kept: it waited for more than a day. Send it again.", null, cancellationToken);

        using var held = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
        var holding = HoldAsync(job, held);
        try
        {
            return await worker.RunAsync(new ImportWork(run, file, (done, total, cancel) => runs.ReportAsync(id, done, total, cancel)), held.Token) switch
            {
                ImportOutcome.Done done => await EndAsync(id, ImportState.Done, null, done.Report, held.Token),
                ImportOutcome.Refused refused => await EndAsync(id, ImportState.Refused, refused.Reason, refused.Report, held.Token),
                _ => throw new InvalidOperationException("Every end of an import is known."),
            };
        }
        catch (OperationCanceledException) when (held.IsCancellationRequested && !cancellationToken.IsCancellationRequested)
        {
            log.LogWarning("The import {Run} was taken over by another node.", id);
            return null;
        }
        catch (Exception exception) when (!cancellationToken.IsCancellationRequested)
        {
            log.LogError(exception, "The import {Run} met a fault.", id);
            if (job.Attempts >= JobQueue.MaxAttempts)
                return await EndAsync(id, ImportState.Failed, $"It was given up after {job.Attempts} attempts: {exception.Message}", null, cancellationToken);
            await runs.PutBackAsync(id, exception.Message, cancellationToken);
            return exception.Message;
        }
        finally
        {
            await held.CancelAsync();
            await holding;
        }
    }

    private async Task<string?> EndAsync(ImportRunId id, ImportState end, string? reason, object? report, CancellationToken cancellationToken)
    {
        await runs.FinishAsync(id, end, reason, report, cancellationToken);
        files.Remove(id.Value);
        log.LogInformation("The import {Run} ended: {End} {Reason}", id, end, reason);
        return null;
    }

    // Also when a long transaction reports nothing for minutes. A database that cannot be reached is no reason to stop: the lease may outlast that.
    private async Task HoldAsync(Job job, CancellationTokenSource held)
    {
        while (!held.IsCancellationRequested)
        {
            await Task.Delay(HoldEvery, clock, held.Token).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            if (held.IsCancellationRequested)
                return;
            try
            {
                if (!await queue.HoldAsync(job, held.Token))
                    await held.CancelAsync();
            }
            catch (Exception exception) when (!held.IsCancellationRequested)
            {
                log.LogWarning(exception, "The import's job could not be held; it is tried again.");
            }
            catch (OperationCanceledException)
            {
                return;
            }
        }
    }
}
