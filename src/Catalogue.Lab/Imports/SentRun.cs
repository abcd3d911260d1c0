using System.Text.Json;
using Catalogue.Data.Conversions;
using Catalogue.Data.Imports;
using Catalogue.Domain.Imports;

namespace Catalogue.Lab.Imports;

/// <summary>What the script says of a run that it sent.</summary>
/// <param name="Id">The run, or null.</param>
/// <param name="Problem">Why there is none, or null.</param>
public sealed record SentRun(Guid? Id, string? Problem)
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(400);

    /// <summary>Waits for the run's end.</summary>
    /// <param name="runs">Reads it.</param>
    /// <param name="progress">Told how far it is after each look, or null.</param>
    /// <param name="cancellationToken">Stops waiting; the run goes on by itself.</param>
    /// <returns>Its report, or why there is none.</returns>
    internal async Task<(TReport? Report, string? Problem)> FollowAsync<TReport>(ImportRuns runs, Action<ImportRun>? progress, CancellationToken cancellationToken)
        where TReport : class
    {
        if (Id is not { } id)
            return (null, Problem ?? "the lab was not reached.");
        while (true)
        {
            var run = await runs.FindAsync(ImportRunId.From(id), cancellationToken);
            if (run is null or { State: ImportState.Refused or ImportState.Failed })
                return (null, run?.Reason ?? "the run is gone.");
            if (run.State is ImportState.Done)
                return (run.Report!.Value.Deserialize<TReport>(StoredJson.Options), null);
            progress?.Invoke(run);
            await Task.Delay(Pause, cancellationToken);
        }
    }
}
