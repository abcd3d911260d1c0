using System.Buffers.Binary;

namespace Catalogue.Media.Photos;

/// <summary>Walks the chunks of a PNG from IHDR to IEND. Only the orientation and the colour profile are read out, both with a bound.</summary>
internal static class PngHeader
{
    private const int ChecksumBytes = 4;

    public static ReadOnlySpan<byte> Signature => [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A];

    public static ImageHeader Read(HeaderReader reader)
    {
        Span<byte> chunk = stackalloc byte[8];
        Span<byte> size = stackalloc byte[8];
        if (!reader.TrySkip(Signature.Length) || !reader.TryRead(chunk) || !reader.TryRead(size))
        {
            return ImageHeader.Truncated();
        }

        if (BinaryPrimitives.ReadUInt32BigEndian(chunk) != 13 || !chunk[4..].SequenceEqual("IHDR"u8))
        {
            return ImageHeader.Damaged("it does not start with its size");
        }

        var width = BinaryPrimitives.ReadUInt32BigEndian(size);
        var height = BinaryPrimitives.ReadUInt32BigEndian(size[4..]);
        if (ImageHeader.CheckSize(width, height) is { } refused)
        {
            return refused;
        }

        if (!reader.TrySkip(13 - size.Length + ChecksumBytes))
        {
            return ImageHeader.Truncated();
        }

        var hasPixels = false;
        var orientation = 1;
        byte[]? profile = null;
        while (reader.TryRead(chunk))
        {
            long length = BinaryPrimitives.ReadUInt32BigEndian(chunk);
            var type = chunk[4..];
            if (type.SequenceEqual("IEND"u8))
            {
                return !reader.TrySkip(length + ChecksumBytes) ? ImageHeader.Truncated()
                    : hasPixels ? new ImageHeader.Recognised(ImageKind.Png, (int)width, (int)height, orientation) { ColourProfile = profile }
                    : ImageHeader.Damaged("it holds no pixels");
            }

            if (type.SequenceEqual("acTL"u8))
            {
                return ImageHeader.Animated("PNG");
            }

            hasPixels |= type.SequenceEqual("IDAT"u8);
            var isExif = type.SequenceEqual("eXIf"u8);
            if ((isExif || type.SequenceEqual("iCCP"u8)) && length <= ImageLimits.MaxColourProfileBytes)
            {
                var data = new byte[length];
                if (!reader.TryRead(data))
                {
                    return ImageHeader.Truncated();
                }

                length = 0;
                if (isExif)
                {
                    orientation = ExifOrientation.Read(data);
                }
                else
                {
                    profile = ColourProfile.FromPngChunk(data);
                }
            }

            if (!reader.TrySkip(length + ChecksumBytes))
            {
                return ImageHeader.Truncated();
            }
        }

        return ImageHeader.Truncated();
    }
}
