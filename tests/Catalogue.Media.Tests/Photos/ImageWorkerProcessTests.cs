using System.Diagnostics;
using System.Globalization;
using Catalogue.Media.Photos;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.Formats.Png;
using SixLabors.ImageSharp.PixelFormats;

namespace Catalogue.Media.Tests.Photos;

public sealed class ImageWorkerProcessTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task DeriveAsync_Photo_GivesRenditionsFromTheChild()
    {
        using var worker = Worker();
        var input = _folder.File("board.txt", Drawing.WithExif(Drawing.Jpeg(1200, 800, 6), 6));

        var done = Assert.IsType<ImageWork.Done>(await worker.DeriveAsync(input, _folder.Folder("out"), [480, 960, 1920], default));

        Assert.Equal((1200, 800), (done.Width, done.Height));
        Assert.Equal([(1200, 800), (960, 640), (480, 320)], done.Renditions.Select(rendition => (rendition.Width, rendition.Height)));
        Assert.All(done.Renditions, rendition => Assert.Equal(rendition.Bytes, new FileInfo(rendition.Path).Length));
        Assert.Empty(_folder.Files("scratch"));
    }

    [Fact]
    public async Task VerifyAsync_DamagedPicture_IsRefusedByTheChild()
    {
        using var worker = Worker();
        var png = Drawing.Png(64, 48);
        png.AsSpan(png.AsSpan().IndexOf("IDAT"u8) + 8, 20).Fill(0xEE);

        var refused = Assert.IsType<ImageWork.Refused>(await worker.VerifyAsync(_folder.File("in", png), default));

        Assert.Equal(ImageRefusal.Damaged, refused.Reason);
    }

    [Fact]
    public async Task VerifyAsync_LargestPicture_FitsTheDefaultLimits()
    {
        using var worker = Worker();
        using var picture = new Image<L8>(8000, 8000, new L8(90));
        var input = _folder.File("in", Drawing.Encode(picture, new PngEncoder { CompressionLevel = PngCompressionLevel.BestSpeed }));

        var done = Assert.IsType<ImageWork.Done>(await worker.VerifyAsync(input, default));

        Assert.Equal((8000, 8000), (done.Width, done.Height));
    }

    [Fact]
    public async Task VerifyAsync_PictureThatNeedsMoreMemoryThanAllowed_IsRefusedAsTooCostly()
    {
        using var worker = Worker(new ImageWorkerOptions { MemoryLimitBytes = 200L * 1024 * 1024 });
        using var picture = new Image<L8>(8000, 7500, new L8(90));
        var input = _folder.File("in", Drawing.Encode(picture, new PngEncoder { CompressionLevel = PngCompressionLevel.BestSpeed }));

        var refused = Assert.IsType<ImageWork.Refused>(await worker.VerifyAsync(input, default));

        Assert.Equal(ImageRefusal.TooCostly, refused.Reason);
    }

    [Fact]
    public async Task VerifyAsync_TextChunkThatUnpacksTo200Megabytes_IsNeverUnpacked()
    {
        using var worker = Worker(new ImageWorkerOptions { MemoryLimitBytes = 200L * 1024 * 1024 });
        var bomb = Drawing.WithChunk(Drawing.Png(64, 48), "zTXt", [.. "Comment\0\0"u8, .. Drawing.Deflated(new byte[200_000_000])]);

        Assert.IsType<ImageWork.Done>(await worker.VerifyAsync(_folder.File("in", bomb), default));
    }

    [Fact]
    public async Task VerifyAsync_ProcessThatHangs_IsKilledWithItsChildren()
    {
        var pidFile = Path.Combine(_folder.Path, "pid");
        using var worker = Stub($"sleep 60 & echo $! > '{pidFile}'; wait", timeLimit: TimeSpan.FromSeconds(1));

        var timedOut = Assert.IsType<ImageWork.TimedOut>(await worker.VerifyAsync(_folder.File("in", []), default));

        Assert.Equal(TimeSpan.FromSeconds(1), timedOut.Limit);
        // The signal is sent; the end of a process that is not our own child is not waited for, so it may come a moment later.
        var pid = await File.ReadAllTextAsync(pidFile);
        for (var waited = 0; IsRunning(pid) && waited < 100; waited++)
        {
            await Task.Delay(50);
        }

        Assert.False(IsRunning(pid));
        Assert.Empty(_folder.Files("scratch"));
    }

    [Fact]
    public async Task VerifyAsync_ProcessThatLeavesAnotherBehind_IsNotWaitedForLongerThanTheLimit()
    {
        using var worker = Stub("sleep 5 & exit 0", timeLimit: TimeSpan.FromSeconds(1));
        var watch = Stopwatch.StartNew();

        Assert.IsType<ImageWork.TimedOut>(await worker.VerifyAsync(_folder.File("in", []), default));

        Assert.True(watch.Elapsed < TimeSpan.FromSeconds(4));
    }

    [Fact]
    public async Task VerifyAsync_Cancelled_KillsTheProcess()
    {
        var pidFile = Path.Combine(_folder.Path, "pid");
        using var worker = Stub($"echo $$ > '{pidFile}.new'; mv '{pidFile}.new' '{pidFile}'; sleep 60");
        using var cancel = new CancellationTokenSource();
        var work = worker.VerifyAsync(_folder.File("in", []), cancel.Token);
        while (!File.Exists(pidFile))
        {
            await Task.Delay(10);
        }

        await cancel.CancelAsync();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => work);
        Assert.False(IsRunning(await File.ReadAllTextAsync(pidFile)));
    }

    [Fact]
    public async Task VerifyAsync_ProcessThatDies_IsAFailureAndQuotesIt()
    {
        using var worker = Stub("echo 'something broke' >&2; exit 134");

        var failed = Assert.IsType<ImageWork.Failed>(await worker.VerifyAsync(_folder.File("in", []), default));

        Assert.Contains("134", failed.Text, StringComparison.Ordinal);
        Assert.Contains("something broke", failed.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task VerifyAsync_NoLimitToolAndAProcessThatEatsMemory_IsStopped()
    {
        // A line that never ends, which tail keeps whole.
        using var worker = Worker(new ImageWorkerOptions
        {
            Command = ["/usr/bin/tail", "/dev/zero"],
            LimitTool = null,
            MemoryLimitBytes = 64L * 1024 * 1024,
        });

        var refused = Assert.IsType<ImageWork.Refused>(await worker.VerifyAsync(_folder.File("in", []), default));

        Assert.Equal(ImageRefusal.TooCostly, refused.Reason);
    }

    [Fact]
    public async Task VerifyAsync_Process_RunsWithLowPriorityAndLimitedMemory()
    {
        using var worker = Stub("echo nice=$(nice) data=$(ulimit -d) core=$(ulimit -c) >&2; exit 3");

        var failed = Assert.IsType<ImageWork.Failed>(await worker.VerifyAsync(_folder.File("in", []), default));

        Assert.Contains("nice=10 data=1048576 core=0", failed.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Out of memory.")]
    [InlineData("Unhandled exception. System.OutOfMemoryException: Exception of that type was thrown.")]
    public async Task VerifyAsync_RuntimeThatAbortsForWantOfMemory_IsRefusedAsTooCostly(string lastWords)
    {
        using var worker = Stub($"echo '{lastWords}' >&2; kill -ABRT $$");

        var refused = Assert.IsType<ImageWork.Refused>(await worker.VerifyAsync(_folder.File("in", []), default));

        Assert.Equal(ImageRefusal.TooCostly, refused.Reason);
    }

    [Fact]
    public async Task VerifyAsync_ProgramThatDoesNotExist_IsAFailure()
    {
        using var worker = Worker(new ImageWorkerOptions { Command = [Path.Combine(_folder.Path, "none")] });

        Assert.IsType<ImageWork.Failed>(await worker.VerifyAsync(_folder.File("in", []), default));
    }

    [Fact]
    public async Task VerifyAsync_EndlessOutput_NeitherBlocksNorFillsMemory()
    {
        using var worker = Stub("head -c 50000000 /dev/zero; exit 0");

        Assert.IsType<ImageWork.Failed>(await worker.VerifyAsync(_folder.File("in", []), default));
    }

    [Fact]
    public async Task VerifyAsync_SecretsInOurEnvironment_AreNotPassedOn()
    {
        Environment.SetEnvironmentVariable("CATALOGUE_SECRET_OF_THE_TEST", "hush");
        using var worker = Stub("echo secret=[$CATALOGUE_SECRET_OF_THE_TEST] >&2; exit 3");

        var failed = Assert.IsType<ImageWork.Failed>(await worker.VerifyAsync(_folder.File("in", []), default));

        Assert.Contains("secret=[]", failed.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("w8.jpg", "not a picture")]
    [InlineData("../w8.jpg", null)]
    [InlineData("w8.jpg", null)]
    public async Task DeriveAsync_ChildThatLiesAboutItsFiles_IsNotBelieved(string name, string? content)
    {
        var output = _folder.Folder("out");
        _folder.File("w8.jpg", Drawing.Jpeg(8, 8));
        if (content is not null)
        {
            await File.WriteAllTextAsync(Path.Combine(output, name), content);
        }

        using var worker = Stub($$$"""echo '{"done":{"width":8,"height":8,"renditions":[{"name":"{{{name}}}","width":8,"height":8}]}}'""");

        Assert.IsType<ImageWork.Failed>(await worker.DeriveAsync(_folder.File("in", []), output, [8], default));
    }

    [Theory]
    [InlineData("{}", 0)]
    [InlineData("null", 0)]
    [InlineData("[]", 0)]
    [InlineData("""{"done":{"width":8,"height":8}}""", 0)]
    [InlineData("""{"done":{"width":8,"height":8,"renditions":[]}}""", 0)]
    [InlineData("""{"done":{"width":8,"height":8,"renditions":[null]}}""", 0)]
    [InlineData("""{"done":{"width":8,"height":8,"renditions":[{"width":8,"height":8}]}}""", 0)]
    [InlineData("""{"refused":{"code":"Damaged"}}""", 1)]
    [InlineData("""{"refused":{"code":99,"text":"x"}}""", 1)]
    [InlineData("""{"refused":{"code":"Damaged","text":"x"}}""", 0)]
    public async Task DeriveAsync_AnswerThatIsNone_IsAFailure(string answer, int exitCode)
    {
        using var worker = Stub(string.Create(CultureInfo.InvariantCulture, $"echo '{answer}'; exit {exitCode}"));

        Assert.IsType<ImageWork.Failed>(await worker.DeriveAsync(_folder.File("in", []), _folder.Folder("out"), [8], default));
    }

    [Fact]
    public async Task VerifyAsync_MoreJobsThanSlots_TakeTurns()
    {
        using var worker = Stub("sleep 0.3; exit 3", concurrency: 1);
        var input = _folder.File("in", []);
        var watch = Stopwatch.StartNew();

        await Task.WhenAll(worker.VerifyAsync(input, default), worker.VerifyAsync(input, default), worker.VerifyAsync(input, default));

        Assert.True(watch.Elapsed > TimeSpan.FromSeconds(0.85));
    }

    private ImageWorkerProcess Worker(ImageWorkerOptions? options = null) =>
        new((options ?? new ImageWorkerOptions()) with { ScratchFolder = _folder.Folder("scratch") }, TimeProvider.System);

    private ImageWorkerProcess Stub(string script, TimeSpan? timeLimit = null, int concurrency = 2) => Worker(new ImageWorkerOptions
    {
        Command = ["/bin/sh", "-c", script],
        TimeLimit = timeLimit ?? TimeSpan.FromSeconds(20),
        Concurrency = concurrency,
    });

    /// <summary>A killed process that nobody has collected yet is not running.</summary>
    private static bool IsRunning(string pid)
    {
        var status = $"/proc/{int.Parse(pid, NumberStyles.AllowTrailingWhite, CultureInfo.InvariantCulture)}/stat";
        try
        {
            return !File.ReadAllText(status).Contains(") Z ", StringComparison.Ordinal);
        }
        catch (Exception gone) when (gone is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }
}
