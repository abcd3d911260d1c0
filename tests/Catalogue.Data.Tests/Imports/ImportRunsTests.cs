using Catalogue.Data.Imports;
using Catalogue.Data.Queue;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Imports;
using Catalogue.Testing;

namespace Catalogue.Data.Tests.Imports;

public sealed class ImportRunsTests : DatabaseTests
{
    private ImportRuns Runs => Database.Get<ImportRuns>();

    private JobQueue Queue => Database.Get<JobQueue>();

    [Fact]
    public async Task Open_ARun_WaitsInTheQueueUnderItsId()
    {
        var run = await OpenAsync();

        var job = await Queue.TakeAsync(JobLane.Lengthy);

        Assert.Equal((ImportRuns.JobKind, run.Id.ToString()), (job!.Kind, job.Subject));
        var stored = await Runs.FindAsync(run.Id);
        Assert.Equal((ImportState.Waiting, "two benches.zip", "true"), (stored!.State, stored.FileName, stored.Options["dry_run"]));
        Assert.Null(stored.Report);
        Assert.False(stored.HasEnded);
    }

    [Fact]
    public async Task Take_FromTheQuickLane_NeverWaitsForAnImport()
    {
        await OpenAsync();

        Assert.Null(await Queue.TakeAsync(JobLane.Quick));
        Assert.NotNull(await Queue.TakeAsync(JobLane.Lengthy));
    }

    [Fact]
    public async Task Begin_AfterABreak_StartsFromTheBeginning()
    {
        var run = await OpenAsync();
        await Runs.BeginAsync(run.Id);
        await Runs.ReportAsync(run.Id, 3, 8);
        Assert.Equal((3, 8), await Runs.FindAsync(run.Id) is { } half ? (half.PartsDone, half.PartsTotal) : default);

        var again = await Runs.BeginAsync(run.Id);

        Assert.Equal((ImportState.Running, 0, 0), (again!.State, again.PartsDone, again.PartsTotal));
    }

    [Fact]
    public async Task PutBack_ThenBegin_ForgetsTheReason()
    {
        var run = await OpenAsync();
        await Runs.BeginAsync(run.Id);
        await Runs.PutBackAsync(run.Id, "The disk is full.");
        Assert.Equal((ImportState.Waiting, "The disk is full."), await Runs.FindAsync(run.Id) is { } waiting ? (waiting.State, waiting.Reason) : default);

        Assert.Null((await Runs.BeginAsync(run.Id))!.Reason);
    }

    [Fact]
    public async Task Finish_OfARunThatHasEnded_ChangesNothing()
    {
        var run = await OpenAsync();
        await Runs.BeginAsync(run.Id);

        Assert.True(await Runs.FinishAsync(run.Id, ImportState.Done, null, new { TeardownsAdded = 2 }));
        Assert.False(await Runs.FinishAsync(run.Id, ImportState.Failed, "Too late.", null));
        await Runs.ReportAsync(run.Id, 9, 9);

        var ended = await Runs.FindAsync(run.Id);
        Assert.Equal((ImportState.Done, 0), (ended!.State, ended.PartsDone));
        Assert.Equal(2, ended.Report!.Value.GetProperty("teardowns_added").GetInt32());
        Assert.Null(await Runs.BeginAsync(run.Id));
    }

    [Fact]
    public async Task Finish_WithALongReasonFullOfControls_KeepsWhatAFieldHolds()
    {
        var run = await OpenAsync();

        await Runs.FinishAsync(run.Id, ImportState.Refused, "\0" + new string('x', 5000), null);

        Assert.Equal(ImportRun.MaxReasonLength - 1, (await Runs.FindAsync(run.Id))!.Reason!.Length);
    }

    [Theory]
    [InlineData(ImportState.Waiting)]
    [InlineData(ImportState.Running)]
    public async Task Finish_WithAStateThatIsNoEnd_Throws(ImportState state)
    {
        var run = await OpenAsync();

        await Assert.ThrowsAsync<ArgumentOutOfRangeException>(() => Runs.FinishAsync(run.Id, state, null, null));
    }

    [Fact]
    public async Task LastOf_APersonAndAScriptOfOneName_AreTwo()
    {
        var first = await OpenAsync();
        var second = await OpenAsync();
        var script = await OpenAsync(role: null);

        Assert.Equal([second.Id, first.Id], (await Runs.LastOfAsync(Bench.Reviewer, 10)).Select(run => run.Id));
        Assert.Equal([second.Id], (await Runs.LastOfAsync(Bench.Reviewer, 1)).Select(run => run.Id));
        Assert.Equal([script.Id], (await Runs.LastOfAsync(Bench.Reviewer with { IsPerson = false }, 10)).Select(run => run.Id));
    }

    [Fact]
    public async Task Hold_ByAWorkerThatLostItsLease_IsRefused()
    {
        await OpenAsync();
        var first = await Queue.TakeAsync();
        Database.Clock.Advance(JobQueue.Lease * 0.9);
        Assert.True(await Queue.HoldAsync(first!));
        Database.Clock.Advance(JobQueue.Lease * 0.9);
        Assert.Null(await Queue.TakeAsync());
        Database.Clock.Advance(JobQueue.Lease);
        var second = await Queue.TakeAsync();

        Assert.False(await Queue.HoldAsync(first!));
        Assert.True(await Queue.HoldAsync(second!));
        await Queue.FinishAsync(second!.Id);
        Assert.False(await Queue.HoldAsync(second));
    }

    private Task<ImportRun> OpenAsync(string? role = "reviewer") =>
        Runs.OpenAsync(new ImportRuns.Request(
            ImportRunId.New(), ImportKind.TeardownArchive, "two benches.zip", new Dictionary<string, string> { ["dry_run"] = "true" }, new Editor(Bench.Reviewer.Name, role is not null), role));
}
