using Catalogue.Data.Photos;
using Catalogue.Data.Queue;
using Catalogue.Testing;

namespace Catalogue.Data.Tests.Queue;

public sealed class JobQueueTests : DatabaseTests
{
    private JobQueue Queue => Database.Get<JobQueue>();

    [Fact]
    public async Task Take_ByEightWorkersAtOnce_GivesEachJobOnce()
    {
        for (var i = 0; i < 5; i++)
            await EnqueueAsync($"picture {i}");

        var taken = (await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => Queue.TakeAsync()))).OfType<Job>().ToList();

        Assert.Equal(5, taken.Count);
        Assert.Equal(5, taken.Select(job => job.Id).Distinct().Count());
    }

    [Fact]
    public async Task Take_WhenTheWorkerDied_GivesTheJobAgainAfterItsLease()
    {
        await EnqueueAsync("picture");
        var first = await Queue.TakeAsync();

        Assert.Null(await Queue.TakeAsync());
        Database.Clock.Advance(JobQueue.Lease + TimeSpan.FromSeconds(1));

        var second = await Queue.TakeAsync();
        Assert.Equal(first!.Id, second!.Id);
        Assert.Equal(2, second.Attempts);
    }

    [Fact]
    public async Task Fail_TimeAndAgain_IsGivenUpWithItsReason()
    {
        await EnqueueAsync("picture");

        for (var attempt = 1; attempt <= JobQueue.MaxAttempts; attempt++)
        {
            var job = await Queue.TakeAsync();
            Assert.Equal(attempt, job!.Attempts);
            await Queue.FailAsync(job, "It could not be decoded.");
            Database.Clock.Advance(TimeSpan.FromHours(1));
        }

        Assert.Null(await Queue.TakeAsync());
        Assert.Equal("It could not be decoded.", await Database.ScalarAsync<string>("select failure from jobs"));
    }

    [Fact]
    public async Task Enqueue_TheSameTwice_IsOneOpenJobAndAnotherOnceItIsDone()
    {
        await EnqueueAsync("picture");
        await EnqueueAsync("picture");
        Assert.Equal(1, await Database.ScalarAsync<long>("select count(*) from jobs"));

        await Queue.FinishAsync((await Queue.TakeAsync())!.Id);
        await EnqueueAsync("picture");

        Assert.Equal(2, await Database.ScalarAsync<long>("select count(*) from jobs"));
    }

    [Fact]
    public async Task AddPhoto_QueuesItsRenditionsOnce()
    {
        var teardown = await Bench.TeardownAsync();
        var picture = new PhotoChanges.TakenIn(new string('b', 64), "png", 10, 640, 480, null);

        Bench.Done(await Database.Get<PhotoChanges>().AddAsync(teardown.Id, picture, new PhotoForm(), Bench.Reviewer));
        Bench.Done(await Database.Get<PhotoChanges>().AddAsync(teardown.Id, picture, new PhotoForm(), Bench.Reviewer));

        Assert.Equal((PhotoChanges.MakeRenditions, picture.Sha256), await Queue.TakeAsync() is { } job ? (job.Kind, job.Subject) : default);
        Assert.Null(await Queue.TakeAsync());
    }

    private async Task EnqueueAsync(string subject)
    {
        await using var context = await Database.ContextAsync();
        await JobQueue.EnqueueAsync(context, PhotoChanges.MakeRenditions, subject, Database.Clock.GetUtcNow(), default);
    }
}
