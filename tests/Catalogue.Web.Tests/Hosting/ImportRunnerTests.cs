using Catalogue.Data.Imports;
using Catalogue.Data.Queue;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Imports;
using Catalogue.Media.Imports;
using Catalogue.Media.Photos;
using Catalogue.Testing;
using Catalogue.Web.Hosting;
using Catalogue.Web.Imports;
using Microsoft.Extensions.Logging.Abstractions;

namespace Catalogue.Web.Tests.Hosting;

public sealed class ImportRunnerTests : IAsyncLifetime
{
    private readonly string _folder = Directory.CreateTempSubdirectory("catalogue-imports-").FullName;
    private CatalogueDatabaseFixture _database = null!;
    private StagedFiles _files = null!;

    private ImportRuns Runs => _database.Get<ImportRuns>();

    private JobQueue Queue => _database.Get<JobQueue>();

    public async ValueTask InitializeAsync()
    {
        _database = await CatalogueDatabaseFixture.CreateAsync();
        _files = new StagedFiles(new MediaStore(_folder));
    }

    public async ValueTask DisposeAsync()
    {
        await _database.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }

    [Fact]
    public async Task Run_WorkThatIsDone_KeepsItsReportAndNotItsFile()
    {
        var id = await OpenAsync([7, 8, 9]);
        var worker = new HandWorker(async (work, cancel) =>
        {
            await work.ReportAsync(1, 2, cancel);
            using var copy = new MemoryStream();
            await work.File.CopyToAsync(copy, cancel);
            return new ImportOutcome.Done(new { Bytes = copy.Length, work.Run.Who });
        });

        Assert.Null(await RunAsync(worker));

        var run = await Runs.FindAsync(id);
        Assert.Equal((ImportState.Done, 1, 2), (run!.State, run.PartsDone, run.PartsTotal));
        Assert.Equal((3, "I. Sorrel"), (run.Report!.Value.GetProperty("bytes").GetInt32(), run.Report.Value.Text("who")));
        Assert.Null(_files.Open(id.Value));
        Assert.Null(await Queue.TakeAsync());
    }

    [Fact]
    public async Task Run_FileThatIsRefused_IsNotTriedAgain()
    {
        var id = await OpenAsync([1]);

        Assert.Null(await RunAsync(new HandWorker((_, _) => Task.FromResult<ImportOutcome>(new ImportOutcome.Refused("It is no archive.", new { Line = 3 })))));

        var run = await Runs.FindAsync(id);
        Assert.Equal((ImportState.Refused, "It is no archive."), (run!.State, run.Reason));
        Assert.Equal(3, run.Report!.Value.GetProperty("line").GetInt32());
        Assert.Null(_files.Open(id.Value));
    }

    [Fact]
    public async Task Run_FaultOfTheMachine_IsTriedAgainWithTheSameFileAndThenGivenUp()
    {
        var id = await OpenAsync([1]);
        var attempts = 0;
        var worker = new HandWorker((work, _) =>
        {
            Assert.Equal(1, work.File.ReadByte());
            attempts++;
            throw new IOException("The disk is full.");
        });

        for (var attempt = 1; attempt < JobQueue.MaxAttempts; attempt++)
        {
            Assert.Equal("The disk is full.", await RunAsync(worker));
            Assert.Equal((ImportState.Waiting, "The disk is full."), await Runs.FindAsync(id) is { } waiting ? (waiting.State, waiting.Reason) : default);
            _database.Clock.Advance(TimeSpan.FromHours(1));
        }

        Assert.Null(await RunAsync(worker));

        Assert.Equal(JobQueue.MaxAttempts, attempts);
        var run = await Runs.FindAsync(id);
        Assert.Equal(ImportState.Failed, run!.State);
        Assert.Contains("The disk is full.", run.Reason, StringComparison.Ordinal);
        Assert.Null(_files.Open(id.Value));
    }

    [Fact]
    public async Task Run_AfterTheProcessWasKilled_BeginsAgain()
    {
        var id = await OpenAsync([1]);
        using var killed = new CancellationTokenSource();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => RunAsync(
            new HandWorker(async (work, cancel) =>
            {
                await work.ReportAsync(5, 9, cancel);
                await killed.CancelAsync();
                cancel.ThrowIfCancellationRequested();
                return new ImportOutcome.Done(new { });
            }),
            killed.Token));
        Assert.Equal(ImportState.Running, (await Runs.FindAsync(id))!.State);
        _database.Clock.Advance(JobQueue.Lease * 1.1);

        Assert.Null(await RunAsync(new HandWorker((work, _) => Task.FromResult<ImportOutcome>(new ImportOutcome.Done(new { work.Run.PartsDone })))));

        var run = await Runs.FindAsync(id);
        Assert.Equal((ImportState.Done, 0), (run!.State, run.Report!.Value.GetProperty("parts_done").GetInt32()));
    }

    [Fact]
    public async Task Run_FileThatEndsTheProgramEachTime_IsGivenUp()
    {
        var id = await OpenAsync([1]);
        for (var attempt = 1; attempt <= JobQueue.MaxAttempts; attempt++)
        {
            Assert.NotNull(await Queue.TakeAsync());
            _database.Clock.Advance(JobQueue.Lease * 1.1);
        }

        Assert.Null(await RunAsync(new HandWorker((_, _) => throw new InvalidOperationException("It is not begun again."))));

        Assert.Equal(ImportState.Failed, (await Runs.FindAsync(id))!.State);
    }

    [Fact]
    public async Task Run_FileThatWaitedTooLong_IsRefused()
    {
        var id = await OpenAsync([1]);
        _files.Remove(id.Value);

        Assert.Null(await RunAsync(new HandWorker((_, _) => throw new InvalidOperationException("There is nothing to run."))));

        Assert.Equal(ImportState.Refused, (await Runs.FindAsync(id))!.State);
    }

    [Fact]
    public async Task Run_KindWithoutWorker_Fails()
    {
        var id = await OpenAsync([1]);
        var runner = new ImportRunner(Runs, _files, Queue, [], _database.Clock, NullLogger<ImportRunner>.Instance);

        Assert.Null(await runner.RunAsync((await Queue.TakeAsync())!, default));

        Assert.Equal(ImportState.Failed, (await Runs.FindAsync(id))!.State);
    }

    private async Task<ImportRunId> OpenAsync(byte[] content)
    {
        var id = ImportRunId.New();
        await _files.ReceiveAsync(id.Value, new MemoryStream(content), 100, default);
        await Runs.OpenAsync(new ImportRuns.Request(id, ImportKind.Article, "note.md", new Dictionary<string, string>(), new Editor("I. Sorrel"), "reviewer"));
        return id;
    }

    private async Task<string?> RunAsync(IImportWorker worker, CancellationToken cancellationToken = default)
    {
        var job = await Queue.TakeAsync(JobLane.Lengthy, cancellationToken);
        Assert.NotNull(job);
        var failure = await new ImportRunner(Runs, _files, Queue, [worker], TimeProvider.System, NullLogger<ImportRunner>.Instance).RunAsync(job, cancellationToken);
        if (failure is null)
            await Queue.FinishAsync(job.Id, cancellationToken);
        else
            await Queue.FailAsync(job, failure, cancellationToken);
        return failure;
    }

    private sealed class HandWorker(Func<ImportWork, CancellationToken, Task<ImportOutcome>> run) : IImportWorker
    {
        public ImportKind Kind => ImportKind.Article;

        public long MaxFileBytes => 100;

        public IReadOnlyDictionary<string, string> Options { get; } = new Dictionary<string, string>();

        public Task<Refusal?> CheckAsync(IReadOnlyDictionary<string, string> options, string? role, CancellationToken cancellationToken) => Task.FromResult<Refusal?>(null);

        public Task<ImportOutcome> RunAsync(ImportWork work, CancellationToken cancellationToken) => run(work, cancellationToken);
    }
}
