using Catalogue.Data.Figures;
using Catalogue.Data.Imports;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Queue;

/// <summary>
/// The queue of long work. Any node may take a job; a lease says who holds it, so that the job of a worker that died is taken again.
/// </summary>
/// <param name="contexts">Makes the context of each step.</param>
/// <param name="clock">Tells the time.</param>
public sealed class JobQueue(IDbContextFactory<CatalogueContext> contexts, TimeProvider clock)
{
    /// <summary>How often a job is begun before it is given up.</summary>
    public const int MaxAttempts = 5;

    /// <summary>How long a worker holds a job before another may take it.</summary>
    public static readonly TimeSpan Lease = TimeSpan.FromMinutes(2);

    // What may take minutes: photos must not wait for it.
    private static readonly string[] LengthyKinds = [ImportRuns.JobKind, RecomputeEverything.JobKind];

    /// <summary>Puts work into the queue, in the caller's transaction; nothing happens where the same is open already.</summary>
    internal static Task<int> EnqueueAsync(CatalogueContext context, string kind, string subject, DateTimeOffset now, CancellationToken cancellationToken) =>
        context.Database.ExecuteSqlAsync(
            $"""
            insert into jobs (kind, subject, attempts, not_before) values ({kind}, {subject}, 0, {now})
            on conflict (kind, subject) where done_at is null and failure is null do nothing
            """,
            cancellationToken);

    /// <summary>Takes the next job that is due, or null.</summary>
    /// <param name="lane">The lane to look in, or null for both.</param>
    /// <param name="cancellationToken">Cancels it.</param>
    public async Task<Job?> TakeAsync(JobLane? lane = null, CancellationToken cancellationToken = default)
    {
        var isLengthy = lane is null ? (bool?)null : lane is JobLane.Lengthy;
        var now = clock.GetUtcNow();
        var until = now + Lease;
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        var taken = await context.Jobs.FromSql(
            $"""
            update jobs set attempts = attempts + 1, leased_until = {until}
            where id = (select id from jobs
                        where done_at is null and failure is null and not_before <= {now} and (leased_until is null or leased_until < {now})
                            and ({isLengthy}::boolean is null or (kind = any({LengthyKinds})) = {isLengthy})
                        order by not_before, id limit 1 for update skip locked)
            returning *
            """).AsNoTracking().ToListAsync(cancellationToken);
        return taken.Count > 0 ? taken[0] : null;
    }

    /// <summary>Says how far a job has come, and holds it for another lease.</summary>
    public async Task ReportAsync(long id, int done, int total, CancellationToken cancellationToken = default)
    {
        var until = clock.GetUtcNow() + Lease;
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await context.Jobs.Where(row => row.Id == id).ExecuteUpdateAsync(
            set => set.SetProperty(row => row.PartsDone, done).SetProperty(row => row.PartsTotal, total).SetProperty(row => row.LeasedUntil, until), cancellationToken);
    }

    /// <summary>Holds a job for another lease.</summary>
    /// <returns>False when it is no longer this worker's: the lease ran out and another took it, or it was ended.</returns>
    public async Task<bool> HoldAsync(Job job, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(job);
        var until = clock.GetUtcNow() + Lease;
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await context.Jobs.Where(row => row.Id == job.Id && row.Attempts == job.Attempts && row.DoneAt == null && row.Failure == null)
            .ExecuteUpdateAsync(set => set.SetProperty(row => row.LeasedUntil, until), cancellationToken) > 0;
    }

    /// <summary>The open jobs of a kind, oldest first.</summary>
    public async Task<IReadOnlyList<Job>> OpenAsync(string kind, CancellationToken cancellationToken = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await context.Jobs.AsNoTracking().Where(row => row.Kind == kind && row.DoneAt == null && row.Failure == null).OrderBy(row => row.Id).ToListAsync(cancellationToken);
    }

    /// <summary>Says that a job is done.</summary>
    public async Task FinishAsync(long id, CancellationToken cancellationToken = default)
    {
        var now = clock.GetUtcNow();
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await context.Jobs.Where(row => row.Id == id).ExecuteUpdateAsync(set => set.SetProperty(row => row.DoneAt, now).SetProperty(row => row.LeasedUntil, (DateTimeOffset?)null), cancellationToken);
    }

    /// <summary>Says that a job failed: it is tried again later, each time after a longer pause, until it is given up with its reason.</summary>
    public async Task FailAsync(Job job, string reason, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(job);
        var again = clock.GetUtcNow() + TimeSpan.FromSeconds(Math.Pow(2, job.Attempts));
        var failure = job.Attempts >= MaxAttempts ? reason : null;
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await context.Jobs.Where(row => row.Id == job.Id)
            .ExecuteUpdateAsync(
                set => set.SetProperty(row => row.NotBefore, again).SetProperty(row => row.LeasedUntil, (DateTimeOffset?)null).SetProperty(row => row.Failure, failure),
                cancellationToken);
    }

    /// <summary>True when the queue can be read: the readiness check.</summary>
    public async Task<bool> IsReadyAsync(CancellationToken cancellationToken = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await context.Jobs.AnyAsync(cancellationToken);
        return true;
    }
}
