using Catalogue.Data.Figures;
using Catalogue.Data.Imports;
using Catalogue.Data.Photos;
using Catalogue.Data.Queue;
using Catalogue.Domain.Photos;
using Catalogue.Media.Photos;

namespace Catalogue.Web.Hosting;

/// <summary>Takes jobs from the queue, one at a time of each lane, as long as the site runs. Other nodes do the same beside it.</summary>
/// <param name="queue">The queue.</param>
/// <param name="figures">Recomputes figures.</param>
/// <param name="imports">Runs imports.</param>
/// <param name="files">What the database knows of pictures.</param>
/// <param name="maker">Makes renditions.</param>
/// <param name="store">Where pictures are kept.</param>
/// <param name="clock">Tells the time.</param>
/// <param name="log">The log.</param>
internal sealed class QueueWorker(JobQueue queue, RecomputeEverything figures, ImportRunner imports, RenditionStore files, RenditionMaker maker, MediaStore store, TimeProvider clock, ILogger<QueueWorker> log)
    : BackgroundService
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(500);
    private static readonly TimeSpan PauseAfterFault = TimeSpan.FromSeconds(5);

    protected override Task ExecuteAsync(CancellationToken stoppingToken) => Task.WhenAll(WorkAsync(JobLane.Quick, stoppingToken), WorkAsync(JobLane.Lengthy, stoppingToken));

    private async Task WorkAsync(JobLane lane, CancellationToken stoppingToken)
    {
        var isStampChecked = lane is JobLane.Quick;
        while (!stoppingToken.IsCancellationRequested)
        {
            var pause = Pause;
            try
            {
                // Figures computed by other rules or lines than those of this program are recomputed in the background.
                if (!isStampChecked)
                {
                    await figures.EnqueueIfStaleAsync(stoppingToken);
                    isStampChecked = true;
                }

                if (await queue.TakeAsync(lane, stoppingToken) is { } job)
                {
                    await RunAsync(job, stoppingToken);
                    continue;
                }
            }
            catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
            {
                return;
            }
            catch (Exception exception)
            {
                log.LogError(exception, "The queue cannot be read; it is tried again.");
                pause = PauseAfterFault;
            }

            await Task.Delay(pause, clock, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    private async Task RunAsync(Job job, CancellationToken cancellationToken)
    {
        try
        {
            var failure = job.Kind switch
            {
                PhotoChanges.MakeRenditions => await MakeRenditionsAsync(job.Subject, cancellationToken),
                RecomputeEverything.JobKind => await RecomputeAsync(job, cancellationToken),
                ImportRuns.JobKind => await imports.RunAsync(job, cancellationToken),
                _ => $"No worker knows jobs of the kind {job.Kind}.",
            };
            if (failure is null)
                await queue.FinishAsync(job.Id, cancellationToken);
            else
                await GiveBackAsync(job, failure, cancellationToken);
        }
        catch (Exception exception) when (exception is not OperationCanceledException)
        {
            log.LogError(exception, "Job {Kind} {Subject} failed.", job.Kind, job.Subject);
            await queue.FailAsync(job, exception.Message, cancellationToken);
        }
    }

    private async Task<string?> RecomputeAsync(Job job, CancellationToken cancellationToken)
    {
        var total = await figures.RunAsync((step, cancel) => queue.ReportAsync(job.Id, step.Done, step.Total, cancel), cancellationToken);
        log.LogInformation("Figures of {Teardowns} teardowns recomputed: {Figures} figures, {Changed} current ones changed.", total.Teardowns, total.Figures, total.Changed);
        return null;
    }

    private async Task GiveBackAsync(Job job, string failure, CancellationToken cancellationToken)
    {
        log.LogWarning("Job {Kind} {Subject} failed: {Failure}", job.Kind, job.Subject, failure);
        await queue.FailAsync(job, failure, cancellationToken);
    }

    private async Task<string?> MakeRenditionsAsync(string sha256, CancellationToken cancellationToken)
    {
        if (await files.FindFileAsync(sha256, cancellationToken) is not { } file)
            return "The picture is not known.";
        var original = MediaKey.Original(Sha256.Parse(sha256), Enum.Parse<ImageKind>(file.Kind, ignoreCase: true));
        switch (await maker.RunAsync(original, RenditionWidths.All, cancellationToken))
        {
            case ImageWork.Done done:
                var rows = new List<Data.Photos.Rendition>();
                foreach (var made in done.Renditions)
                {
                    var key = MediaKey.Rendition(original.Hash, made.Width);
                    await using var content = await store.OpenAsync(key, cancellationToken) ?? throw new FileNotFoundException("A rendition just made is gone.", key.FileName);
                    rows.Add(new Data.Photos.Rendition
                    {
                        Sha256 = sha256,
                        WidthPixels = made.Width,
                        HeightPixels = made.Height,
                        StoreName = key.FileName,
                        ContentSha256 = (await Sha256.OfAsync(content.Stream, cancellationToken)).Text,
                        Bytes = made.Bytes,
                    });
                }

                await files.RecordAsync(sha256, rows, cancellationToken);
                return null;
            case ImageWork.Refused refused:
                return refused.Text;
            case ImageWork.TimedOut timedOut:
                return $"Decoding took longer than {timedOut.Limit.TotalSeconds:0} s.";
            case ImageWork.Failed failed:
                return failed.Text;
            default:
                throw new InvalidOperationException("Every end of the worker is known.");
        }
    }
}
