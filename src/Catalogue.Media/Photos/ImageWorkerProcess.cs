using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace Catalogue.Media.Photos;

/// <summary>
/// The outside of the worker process: starts one for each picture, with bounds on time, memory, output and number, and believes
/// nothing it prints without looking. The process gets none of this program's environment, so no secret to leak.
/// </summary>
public sealed class ImageWorkerProcess : IDisposable
{
    // 128 + SIGABRT: the runtime's end when even its own allocations fail.
    private const int AbortExitCode = 134;
    private const int MaxOutputCharacters = 16 * 1024;
    private const int MaxQuotedCharacters = 400;
    private static readonly TimeSpan MemoryPollInterval = TimeSpan.FromMilliseconds(50);

    private readonly ImageWorkerOptions _options;
    private readonly TimeProvider _time;
    private readonly SemaphoreSlim _slots;

    /// <summary>Prepares, starts nothing yet.</summary>
    /// <exception cref="ArgumentException">The options hold no command or no slot.</exception>
    public ImageWorkerProcess(ImageWorkerOptions options, TimeProvider time)
    {
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(time);
        if (options.Command.Count == 0 || options.Concurrency < 1)
        {
            throw new ArgumentException("A command and at least one process are needed.", nameof(options));
        }

        _options = options;
        _time = time;
        _slots = new SemaphoreSlim(options.Concurrency);
    }

    /// <summary>Decodes a picture completely and writes nothing.</summary>
    /// <exception cref="OperationCanceledException">Cancelled; the process is gone.</exception>
    public Task<ImageWork> VerifyAsync(string inputPath, CancellationToken cancellationToken) =>
        RunAsync(["verify", Path.GetFullPath(inputPath)], outputFolder: null, cancellationToken);

    /// <summary>Makes the renditions of a picture.</summary>
    /// <param name="inputPath">The original.</param>
    /// <param name="outputFolder">An existing, empty folder of the caller's; after anything but Done it may hold leftovers.</param>
    /// <param name="widths">Widths in pixels, see <see cref="RenditionSizes"/>.</param>
    /// <param name="cancellationToken">Kills the process.</param>
    /// <exception cref="OperationCanceledException">Cancelled; the process is gone.</exception>
    public Task<ImageWork> DeriveAsync(string inputPath, string outputFolder, IReadOnlyList<int> widths, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(widths);
        var list = string.Join(',', widths.Select(width => width.ToString(CultureInfo.InvariantCulture)));
        return RunAsync(["derive", Path.GetFullPath(inputPath), Path.GetFullPath(outputFolder), list], Path.GetFullPath(outputFolder), cancellationToken);
    }

    /// <summary>Releases the queue. Running jobs must have ended.</summary>
    public void Dispose() => _slots.Dispose();

    private async Task<ImageWork> RunAsync(string[] arguments, string? outputFolder, CancellationToken cancellationToken)
    {
        await _slots.WaitAsync(cancellationToken);
        try
        {
            Directory.CreateDirectory(_options.ScratchFolder);
            var scratch = Directory.CreateDirectory(Path.Combine(_options.ScratchFolder, $"image-worker-{Guid.NewGuid():n}"));
            if (!OperatingSystem.IsWindows())
            {
                scratch.UnixFileMode = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;
            }

            try
            {
                return await RunAsync(StartInfo(arguments, scratch.FullName), outputFolder, cancellationToken);
            }
            finally
            {
                scratch.Delete(recursive: true);
            }
        }
        finally
        {
            _slots.Release();
        }
    }

    private async Task<ImageWork> RunAsync(ProcessStartInfo start, string? outputFolder, CancellationToken cancellationToken)
    {
        using var process = new Process { StartInfo = start };
        try
        {
            process.Start();
        }
        catch (Win32Exception exception)
        {
            return new ImageWork.Failed($"The image worker {_options.Command[0]} did not start: {exception.Message}");
        }

        process.StandardInput.Close();
        var output = ReadBoundedAsync(process.StandardOutput);
        var errors = ReadBoundedAsync(process.StandardError);

        using var timeLimit = new CancellationTokenSource(_options.TimeLimit, _time);
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken, timeLimit.Token);
        var tooMuchMemory = _options.LimitTool is null ? WatchMemoryAsync(process, stop) : Task.FromResult(false);
        try
        {
            await process.WaitForExitAsync(stop.Token);

            // Something the process left behind may hold its output open: that counts against the time as well.
            await Task.WhenAll(output, errors).WaitAsync(stop.Token);
        }
        catch (OperationCanceledException)
        {
            process.Kill(entireProcessTree: true);
            await process.WaitForExitAsync(CancellationToken.None);
            cancellationToken.ThrowIfCancellationRequested();
            return await tooMuchMemory ? TooMuchMemory() : new ImageWork.TimedOut(_options.TimeLimit);
        }

        await stop.CancelAsync();
        await tooMuchMemory;
        return Judge(process.ExitCode, await output, await errors, outputFolder);
    }

    private static ImageWork Judge(int exitCode, string output, string errors, string? outputFolder)
    {
        if (ImageWorkerAnswer.FromJson(output) is { } answer)
        {
            if (exitCode == ImageWorker.RefusedExitCode && answer.Refused is { Text: { } text } reason && Enum.IsDefined(reason.Code))
            {
                return new ImageWork.Refused(reason.Code, text);
            }

            if (exitCode == ImageWorker.DoneExitCode && answer.Done is { Renditions: { } files } picture)
            {
                var renditions = files.Select(file => Check(file, outputFolder)).OfType<Rendition>().ToList();
                return renditions.Count == files.Count && renditions.Count > 0 == outputFolder is not null
                    ? new ImageWork.Done(picture.Width, picture.Height, renditions)
                    : new ImageWork.Failed("The image worker named files that it did not write as it says.");
            }
        }

        if (exitCode == AbortExitCode && (errors.Contains("Out of memory", StringComparison.Ordinal) || errors.Contains("OutOfMemory", StringComparison.Ordinal)))
        {
            return TooMuchMemory();
        }

        var words = string.Join(' ', (errors + ' ' + output).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        return new ImageWork.Failed(string.Create(
            CultureInfo.InvariantCulture,
            $"The image worker ended with code {exitCode} and no answer: {words[..Math.Min(words.Length, MaxQuotedCharacters)]}"));
    }

    /// <summary>A decoder that was taken over could name any file; only a JPEG of the stated size, under the name we expect, counts.</summary>
    private static Rendition? Check(ImageWorkerAnswer.File? file, string? outputFolder)
    {
        if (file is null || outputFolder is null || file.Name != ImageWorker.FileName(file.Width))
        {
            return null;
        }

        var written = new FileInfo(Path.Combine(outputFolder, file.Name));
        if (!written.Exists || written.LinkTarget is not null)
        {
            return null;
        }

        using var stream = written.OpenRead();
        return ImageHeader.Read(stream) is ImageHeader.Recognised { Kind: ImageKind.Jpeg, Orientation: 1 } header
            && header.Width == file.Width && header.Height == file.Height
            ? new Rendition(written.FullName, file.Width, file.Height, written.Length)
            : null;
    }

    // The limit is on data (private writable memory), not on address space, of which the runtime reserves far more than it uses.
    private ProcessStartInfo StartInfo(string[] arguments, string scratch)
    {
        List<string> line = [];
        if (_options.PriorityTool is { } nice)
        {
            line.AddRange([nice, "-n", _options.Niceness.ToString(CultureInfo.InvariantCulture)]);
        }

        if (_options.LimitTool is { } prlimit)
        {
            line.AddRange([prlimit, string.Create(CultureInfo.InvariantCulture, $"--data={_options.MemoryLimitBytes}"), "--core=0", "--"]);
        }

        line.AddRange(_options.Command);
        line.AddRange(arguments);

        var start = new ProcessStartInfo(line[0], line[1..])
        {
            WorkingDirectory = scratch,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = Encoding.UTF8,
            StandardErrorEncoding = Encoding.UTF8,
        };

        var runtime = Environment.GetEnvironmentVariable("DOTNET_ROOT");
        var path = Environment.GetEnvironmentVariable("PATH");
        start.Environment.Clear();
        start.Environment["PATH"] = path;
        start.Environment["TMPDIR"] = scratch;
        start.Environment["HOME"] = scratch;
        start.Environment["DOTNET_gcServer"] = "0";
        start.Environment["DOTNET_TieredPGO"] = "0";
        start.Environment["DOTNET_EnableDiagnostics"] = "0";
        start.Environment["DOTNET_SYSTEM_GLOBALIZATION_INVARIANT"] = "1";
        start.Environment["DOTNET_GCHeapHardLimit"] = "0x" + (_options.MemoryLimitBytes / 2).ToString("x", CultureInfo.InvariantCulture);
        if (runtime is not null)
        {
            start.Environment["DOTNET_ROOT"] = runtime;
        }

        return start;
    }

    /// <summary>Where no tool sets a limit: looks at the memory in use, and stops everything when there is too much.</summary>
    private async Task<bool> WatchMemoryAsync(Process process, CancellationTokenSource stop)
    {
        try
        {
            while (true)
            {
                await Task.Delay(MemoryPollInterval, _time, stop.Token);
                process.Refresh();
                if (process.WorkingSet64 > _options.MemoryLimitBytes)
                {
                    await stop.CancelAsync();
                    return true;
                }
            }
        }
        catch (Exception ended) when (ended is OperationCanceledException or InvalidOperationException)
        {
            return false;
        }
    }

    private static ImageWork.Refused TooMuchMemory() => new(ImageRefusal.TooCostly, ImageWorker.TooMuchMemory);

    /// <summary>Reads to the end, so that the process never blocks, but keeps only the first part.</summary>
    private static async Task<string> ReadBoundedAsync(StreamReader reader)
    {
        var kept = new StringBuilder();
        var buffer = new char[4096];
        int count;
        while ((count = await reader.ReadAsync(buffer)) > 0)
        {
            kept.Append(buffer, 0, Math.Min(count, MaxOutputCharacters - kept.Length));
        }

        return kept.ToString();
    }
}
