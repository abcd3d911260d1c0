using SixLabors.ImageSharp;
using SixLabors.ImageSharp.Formats.Jpeg;
using SixLabors.ImageSharp.Formats.Png;
using SixLabors.ImageSharp.Formats.Webp;
using SixLabors.ImageSharp.Memory;
using SixLabors.ImageSharp.Metadata.Profiles.Icc;
using SixLabors.ImageSharp.PixelFormats;
using SixLabors.ImageSharp.Processing;

namespace Catalogue.Media.Photos;

/// <summary>
/// Every call to the decoder library, so that it can be swapped in one place. It runs in the worker process only, after
/// <see cref="ImageHeader"/> has passed the file, and may throw anything at all.
/// </summary>
internal static class PictureCodec
{
    private const int JpegQuality = 82;

    // Four bytes a pixel of the largest picture. The limit holds for one buffer; the sum is the process's own limit.
    private const int LargestBufferMegabytes = (int)(ImageLimits.MaxPixels * 4 / (1024 * 1024)) + 1;

    // No format is registered: the decoder is chosen by our own header, and the library's detection of formats never runs.
    private static readonly Configuration NoFormats = new()
    {
        MemoryAllocator = MemoryAllocator.Create(new MemoryAllocatorOptions
        {
            AllocationLimitMegabytes = LargestBufferMegabytes,
            MaximumPoolSizeMegabytes = 64,
        }),
    };

    /// <summary>Decodes every pixel and throws them away.</summary>
    /// <exception cref="InvalidDataException">The pixels do not have the size that the header gives.</exception>
    public static void Verify(string path, ImageHeader.Recognised header)
    {
        using var picture = Decode(path, header);
    }

    /// <summary>Writes one upright JPEG a width from a single decode, without any metadata but an RGB colour profile.</summary>
    /// <param name="path">The original.</param>
    /// <param name="header">What <see cref="ImageHeader"/> read from it.</param>
    /// <param name="sizes">Upright sizes in pixels, none larger than the picture, largest first.</param>
    /// <param name="write">Given a size and a way to write its file.</param>
    public static void Derive(
        string path,
        ImageHeader.Recognised header,
        IReadOnlyList<(int Width, int Height)> sizes,
        Action<(int Width, int Height), Action<Stream>> write)
    {
        using var picture = Decode(path, header);
        var encoder = new JpegEncoder { Quality = JpegQuality, ColorType = JpegColorType.YCbCrRatio420 };

        // Shrinking before turning keeps one full-size buffer alive instead of two.
        var (width, height) = sizes[0];
        var asStored = header.Orientation >= 5 ? new Size(height, width) : new Size(width, height);
        var (rotate, flip) = Upright(header.Orientation);
        picture.Mutate(image => image.Resize(asStored).RotateFlip(rotate, flip).BackgroundColor(Color.White));

        picture.Metadata.ExifProfile = null;
        picture.Metadata.XmpProfile = null;
        picture.Metadata.IptcProfile = null;
        picture.Metadata.IccProfile = header.ColourProfile is { } profile ? new IccProfile(profile) : null;

        foreach (var size in sizes)
        {
            if (size.Width < picture.Width)
            {
                picture.Mutate(image => image.Resize(size.Width, size.Height));
            }

            write(size, stream => picture.Save(stream, encoder));
        }
    }

    /// <summary>Gives back what a decode that ran out of memory left behind, so that the answer can still be written.</summary>
    public static void ReleaseMemory()
    {
        GC.Collect();
        GC.WaitForPendingFinalizers();
        NoFormats.MemoryAllocator.ReleaseRetainedResources();
    }

    private static Image Decode(string path, ImageHeader.Recognised header)
    {
        using var file = File.OpenRead(path);

        // Metadata are ignored throughout: what we need of them our own header has read, with bounds, and the library reads them without.
        Image picture = header.Kind switch
        {
            ImageKind.Jpeg => new JpegDecoder { IgnoreMetadata = true }.Decode<Rgb24>(NoFormats, file, CancellationToken.None),
            ImageKind.Png => new PngDecoder { IgnoreMetadata = true }.Decode<Rgba32>(NoFormats, file, CancellationToken.None),
            ImageKind.Webp => new WebpDecoder { IgnoreMetadata = true }.Decode<Rgba32>(NoFormats, file, CancellationToken.None),
            _ => throw new ArgumentOutOfRangeException(nameof(header), header.Kind, "Not a picture format."),
        };

        if (picture.Width == header.StoredWidth && picture.Height == header.StoredHeight && picture.Frames.Count == 1)
        {
            return picture;
        }

        picture.Dispose();
        throw new InvalidDataException("The pixels do not have the size that the header gives.");
    }

    /// <summary>What turns a picture of this EXIF orientation upright.</summary>
    private static (RotateMode Rotate, FlipMode Flip) Upright(int orientation) => orientation switch
    {
        2 => (RotateMode.None, FlipMode.Horizontal),
        3 => (RotateMode.Rotate180, FlipMode.None),
        4 => (RotateMode.None, FlipMode.Vertical),
        5 => (RotateMode.Rotate90, FlipMode.Horizontal),
        6 => (RotateMode.Rotate90, FlipMode.None),
        7 => (RotateMode.Rotate270, FlipMode.Horizontal),
        8 => (RotateMode.Rotate270, FlipMode.None),
        _ => (RotateMode.None, FlipMode.None),
    };
}
