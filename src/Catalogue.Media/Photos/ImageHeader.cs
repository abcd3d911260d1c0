using System.Globalization;

namespace Catalogue.Media.Photos;

/// <summary>
/// What a file says about itself, read without decoding a pixel and without the decoder library. It is the gate before any
/// decoder: a file that it refuses never reaches one. The client's file name and content type play no part.
/// </summary>
public abstract record ImageHeader
{
    private ImageHeader()
    {
    }

    /// <summary>A picture within all limits whose structure reaches its end; its pixels may still turn out to be damaged.</summary>
    /// <param name="Kind">The format, by content.</param>
    /// <param name="StoredWidth">Columns as stored, 1 to <see cref="ImageLimits.MaxSidePixels"/>.</param>
    /// <param name="StoredHeight">Rows as stored, 1 to <see cref="ImageLimits.MaxSidePixels"/>.</param>
    /// <param name="Orientation">EXIF orientation, 1 (as stored) to 8; 1 when the file gives none or an invalid one.</param>
    public sealed record Recognised(ImageKind Kind, int StoredWidth, int StoredHeight, int Orientation) : ImageHeader
    {
        /// <summary>Width in pixels as a person sees the picture.</summary>
        public int Width => Orientation >= 5 ? StoredHeight : StoredWidth;

        /// <summary>Height in pixels as a person sees the picture.</summary>
        public int Height => Orientation >= 5 ? StoredWidth : StoredHeight;

        /// <summary>The embedded RGB colour profile (ICC.1), or null when there is none worth carrying on.</summary>
        internal byte[]? ColourProfile { get; init; }
    }

    /// <summary>Not taken in.</summary>
    /// <param name="Reason">Why, for programs.</param>
    /// <param name="Text">Why, and what would be right, for people.</param>
    public sealed record Refused(ImageRefusal Reason, string Text) : ImageHeader;

    /// <summary>Reads a file. The scan is CPU-bound over a local file, so it runs on a pool thread.</summary>
    /// <exception cref="IOException">The file cannot be read.</exception>
    public static Task<ImageHeader> ReadFileAsync(string path, CancellationToken cancellationToken) =>
        Task.Run(
            () =>
            {
                using var file = File.OpenRead(path);
                return Read(file);
            },
            cancellationToken);

    /// <summary>Reads from the start of a stream that can seek. Where the stream stands afterwards is not defined.</summary>
    /// <exception cref="ArgumentException">The stream cannot seek.</exception>
    /// <exception cref="IOException">The stream cannot be read.</exception>
    public static ImageHeader Read(Stream stream)
    {
        ArgumentNullException.ThrowIfNull(stream);
        if (!stream.CanSeek)
        {
            throw new ArgumentException("The stream must be able to seek.", nameof(stream));
        }

        stream.Position = 0;
        var reader = new HeaderReader(stream);
        var start = reader.Peek();
        if (start.IsEmpty)
        {
            return new Refused(ImageRefusal.Empty, $"The file is empty. {ImageLimits.Accepted}");
        }

        if (start.StartsWith(JpegHeader.Signature))
        {
            return JpegHeader.Read(reader);
        }

        if (start.StartsWith(PngHeader.Signature))
        {
            return PngHeader.Read(reader);
        }

        if (WebpHeader.IsWebp(start))
        {
            return WebpHeader.Read(reader);
        }

        return ForeignFormat.NameOf(start) is { } name
            ? new Refused(ImageRefusal.FormatNotAccepted, $"This looks like {name}, which is not taken as a photo. {ImageLimits.Accepted}")
            : new Refused(ImageRefusal.NotAnImage, $"This is not a picture. {ImageLimits.Accepted}");
    }

    /// <summary>The refusal that a size calls for, or null for a size within the limits.</summary>
    internal static Refused? CheckSize(long width, long height)
    {
        if (width < 1 || height < 1)
        {
            return Damaged("it gives no size");
        }

        var size = string.Create(CultureInfo.InvariantCulture, $"{width:N0} x {height:N0} pixels");
        if (width > ImageLimits.MaxSidePixels || height > ImageLimits.MaxSidePixels)
        {
            return new Refused(ImageRefusal.SideTooLong, $"The picture is {size}: a side is too long. {ImageLimits.Accepted}");
        }

        return width * height > ImageLimits.MaxPixels
            ? new Refused(ImageRefusal.TooManyPixels, $"The picture is {size}: too many. {ImageLimits.Accepted}")
            : null;
    }

    internal static Refused Truncated() => new(
        ImageRefusal.Truncated,
        "The file ends before its picture does, as an interrupted copy would. Copy it again from the camera and upload the whole file.");

    internal static Refused Damaged(string how) => new(
        ImageRefusal.Damaged,
        $"The picture is damaged: {how}. Save it again as JPEG, PNG or WebP with another program, or take it again.");

    internal static Refused Animated(string format) => new(
        ImageRefusal.Animated,
        $"This is an animated {format}. Upload one still picture as JPEG, PNG or WebP.");
}
