using System.Buffers.Binary;

namespace Catalogue.Media.Photos;

/// <summary>Walks the chunks of a WebP file (RFC 9649). The canvas and the picture inside must agree, since a decoder allocates by either.</summary>
internal static class WebpHeader
{
    private const byte AnimationFlag = 0x02;

    public static bool IsWebp(ReadOnlySpan<byte> start) => start.Length >= 12 && start.StartsWith("RIFF"u8) && start[8..12].SequenceEqual("WEBP"u8);

    public static ImageHeader Read(HeaderReader reader)
    {
        Span<byte> riff = stackalloc byte[12];
        reader.TryRead(riff);
        long left = BinaryPrimitives.ReadUInt32LittleEndian(riff[4..]) - 4L;
        if (left > reader.Remaining)
        {
            return ImageHeader.Truncated();
        }

        (int Width, int Height)? canvas = null;
        (int Width, int Height)? picture = null;
        var orientation = 1;
        byte[]? profile = null;
        Span<byte> chunk = stackalloc byte[8];
        Span<byte> start = stackalloc byte[10];
        while (left >= chunk.Length)
        {
            if (!reader.TryRead(chunk))
            {
                return ImageHeader.Truncated();
            }

            var type = chunk[..4];
            long length = BinaryPrimitives.ReadUInt32LittleEndian(chunk[4..]);
            var padded = length + (length & 1);
            left -= chunk.Length + padded;
            var unread = padded;
            if (type.SequenceEqual("ANIM"u8) || type.SequenceEqual("ANMF"u8))
            {
                return ImageHeader.Animated("WebP");
            }

            if (type.SequenceEqual("VP8X"u8) || type.SequenceEqual("VP8 "u8) || type.SequenceEqual("VP8L"u8))
            {
                if (length < start.Length || !reader.TryRead(start))
                {
                    return ImageHeader.Truncated();
                }

                unread -= start.Length;
                if (type[3] == 'X')
                {
                    if ((start[0] & AnimationFlag) != 0)
                    {
                        return ImageHeader.Animated("WebP");
                    }

                    canvas = (1 + ReadUInt24(start[4..]), 1 + ReadUInt24(start[7..]));
                }
                else if (picture is not null)
                {
                    return ImageHeader.Damaged("it holds two pictures");
                }
                else
                {
                    picture = type[3] == 'L' ? ReadLossless(start) : ReadLossy(start);
                    if (picture is null)
                    {
                        return ImageHeader.Damaged("its picture does not start as one");
                    }
                }

                var (width, height) = picture ?? canvas!.Value;
                if (ImageHeader.CheckSize(width, height) is { } refused)
                {
                    return refused;
                }
            }
            else if ((type.SequenceEqual("EXIF"u8) || type.SequenceEqual("ICCP"u8)) && length <= ImageLimits.MaxColourProfileBytes)
            {
                var data = new byte[length];
                if (!reader.TryRead(data))
                {
                    return ImageHeader.Truncated();
                }

                unread -= length;
                if (type[0] == 'E')
                {
                    orientation = ExifOrientation.Read(data);
                }
                else
                {
                    profile = ColourProfile.Usable(data);
                }
            }

            if (!reader.TrySkip(unread))
            {
                return ImageHeader.Truncated();
            }
        }

        if (picture is not { } size)
        {
            return ImageHeader.Damaged("it holds no picture");
        }

        return canvas is not null && canvas != picture
            ? ImageHeader.Damaged("its picture and its canvas differ in size")
            : new ImageHeader.Recognised(ImageKind.Webp, size.Width, size.Height, orientation) { ColourProfile = profile };
    }

    /// <summary>VP8 key frame: three bytes of tag, the start code, then 14 bits of width and height beside 2 bits of scale (RFC 6386, 9.1).</summary>
    private static (int Width, int Height)? ReadLossy(ReadOnlySpan<byte> data) =>
        (data[0] & 1) == 0 && data[3..6].SequenceEqual<byte>([0x9D, 0x01, 0x2A])
            ? (BinaryPrimitives.ReadUInt16LittleEndian(data[6..]) & 0x3FFF, BinaryPrimitives.ReadUInt16LittleEndian(data[8..]) & 0x3FFF)
            : null;

    /// <summary>VP8L: a signature byte, then width and height less one in 14 bits each (RFC 9649, 3.4).</summary>
    private static (int Width, int Height)? ReadLossless(ReadOnlySpan<byte> data)
    {
        var bits = BinaryPrimitives.ReadUInt32LittleEndian(data[1..]);
        return data[0] == 0x2F ? (1 + (int)(bits & 0x3FFF), 1 + (int)((bits >> 14) & 0x3FFF)) : null;
    }

    private static int ReadUInt24(ReadOnlySpan<byte> data) => data[0] | (data[1] << 8) | (data[2] << 16);
}
