using System.Globalization;

namespace Catalogue.Media.Photos;

/// <summary>
/// The inside of the worker process: one picture, one answer as a line of JSON, then the end. Only <see cref="ImageWorkerProcess"/>
/// should start it; docs/decisions/0005-image-worker.md says why decoding lives in a process of its own.
/// </summary>
public static class ImageWorker
{
    /// <summary>The word that the program's command line must start with to become the worker.</summary>
    public const string Verb = "image-worker";

    /// <summary>Exit code after a picture that was decoded, and derived if asked.</summary>
    public const int DoneExitCode = 0;

    /// <summary>Exit code after a picture that was refused; nothing is left in the output folder.</summary>
    public const int RefusedExitCode = 1;

    /// <summary>Exit code for a command line that means nothing; a bug of the caller's, so no JSON.</summary>
    public const int UsageExitCode = 64;

    /// <summary>Exit code when the input cannot be opened or the output cannot be written: not the picture's fault, so no JSON.</summary>
    public const int StorageExitCode = 74;

    internal const string TooMuchMemory = $"Decoding the picture takes more memory than one picture may have. {ImageLimits.Accepted}";

    private const string Usage = "image-worker verify INPUT | image-worker derive INPUT OUTPUT-FOLDER WIDTH[,WIDTH...]";

    /// <summary>Does one job. No exception leaves it: whatever the decoder throws is a refusal of the picture.</summary>
    /// <remarks>The two error codes of 64 and above are those of sysexits.h.</remarks>
    /// <param name="args">
    /// <c>verify INPUT</c>, or <c>derive INPUT OUTPUT-FOLDER WIDTHS</c> with widths in pixels separated by commas; a leading
    /// <see cref="Verb"/> is passed over. The folder must exist.
    /// </param>
    /// <param name="stdout">Gets the answer.</param>
    /// <returns>One of the exit codes above.</returns>
    public static int Run(string[] args, TextWriter stdout)
    {
        ArgumentNullException.ThrowIfNull(args);
        ArgumentNullException.ThrowIfNull(stdout);
        switch (args is [Verb, .. var rest] ? rest : args)
        {
            case ["verify", var input]:
                return Answer(stdout, input, outputFolder: null, []);

            case ["derive", var input, var outputFolder, var text] when TryParseWidths(text, out var widths):
                return Answer(stdout, input, outputFolder, widths);

            default:
                stdout.WriteLine(Usage);
                return UsageExitCode;
        }
    }

    private static int Answer(TextWriter stdout, string input, string? outputFolder, IReadOnlyList<int> widths)
    {
        // Loading the JSON code takes memory, which there may be none of afterwards.
        var outOfMemory = Refuse(ImageRefusal.TooCostly, TooMuchMemory).ToJson();
        stdout.Flush();
        try
        {
            var answer = Decode(input, outputFolder, widths);
            stdout.WriteLine(answer.ToJson());
            return answer.Refused is null ? DoneExitCode : RefusedExitCode;
        }
        catch (Exception memory) when (IsMemory(memory))
        {
            PictureCodec.ReleaseMemory();
            stdout.WriteLine(outOfMemory);
            return RefusedExitCode;
        }
        catch (Exception storage) when (IsStorage(storage))
        {
            stdout.WriteLine(storage.Message);
            return StorageExitCode;
        }
    }

    private static ImageWorkerAnswer Decode(string input, string? outputFolder, IReadOnlyList<int> widths)
    {
        List<(string Temporary, string Final)> files = [];
        try
        {
            ImageHeader header;
            using (var file = File.OpenRead(input))
            {
                header = ImageHeader.Read(file);
            }

            if (header is not ImageHeader.Recognised recognised)
            {
                var refused = (ImageHeader.Refused)header;
                return Refuse(refused.Reason, refused.Text);
            }

            if (outputFolder is null)
            {
                PictureCodec.Verify(input, recognised);
                return new ImageWorkerAnswer(new(recognised.Width, recognised.Height, []), null);
            }

            var sizes = RenditionSizes.For(recognised.Width, recognised.Height, widths);
            PictureCodec.Derive(input, recognised, sizes, (size, save) =>
            {
                var final = Path.Combine(outputFolder, FileName(size.Width));
                files.Add((final + ".part", final));
                using var stream = new FileStream(final + ".part", FileMode.Create);
                save(stream);
                stream.Flush(flushToDisk: true);
            });

            foreach (var (temporary, final) in files)
            {
                File.Move(temporary, final, overwrite: true);
            }

            return new ImageWorkerAnswer(
                new(recognised.Width, recognised.Height, [.. sizes.Select(size => new ImageWorkerAnswer.File(FileName(size.Width), size.Width, size.Height))]),
                null);
        }
        catch (Exception exception)
        {
            foreach (var (temporary, final) in files)
            {
                File.Delete(temporary);
                File.Delete(final);
            }

            if (IsMemory(exception) || IsStorage(exception))
            {
                throw;
            }

            return Refuse(ImageHeader.Damaged("its pixels cannot be decoded"));
        }
    }

    private static bool IsMemory(Exception exception) => exception is OutOfMemoryException || exception.InnerException is OutOfMemoryException;

    /// <summary>A disk's fault. The end of a stream is an IOException too, but there it is the picture that ended.</summary>
    private static bool IsStorage(Exception exception) => exception is UnauthorizedAccessException or (IOException and not EndOfStreamException);

    /// <summary>The name of the rendition of this width, which the parent process insists on.</summary>
    internal static string FileName(int width) => string.Create(CultureInfo.InvariantCulture, $"w{width}.jpg");

    private static ImageWorkerAnswer Refuse(ImageHeader.Refused refused) => Refuse(refused.Reason, refused.Text);

    private static ImageWorkerAnswer Refuse(ImageRefusal reason, string text) => new(null, new(reason, text));

    private static bool TryParseWidths(string text, out IReadOnlyList<int> widths)
    {
        var parsed = new List<int>();
        foreach (var part in text.Split(','))
        {
            if (!int.TryParse(part, NumberStyles.None, CultureInfo.InvariantCulture, out var width) || width < 1)
            {
                widths = [];
                return false;
            }

            parsed.Add(width);
        }

        widths = parsed;
        return true;
    }
}
