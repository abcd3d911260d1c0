using System.Buffers.Binary;

namespace Catalogue.Media.Photos;

/// <summary>
/// Walks the markers of a JPEG (ITU-T T.81 Annex B) from start to end of image. It goes through the whole file, for two things
/// that only the end tells: whether it is there, and how many scans came before it.
/// </summary>
internal static class JpegHeader
{
    private const byte StartOfImage = 0xD8;
    private const byte EndOfImage = 0xD9;
    private const byte StartOfScan = 0xDA;
    private const byte App1 = 0xE1;
    private const byte App2 = 0xE2;

    public static ReadOnlySpan<byte> Signature => [0xFF, StartOfImage, 0xFF];

    public static ImageHeader Read(HeaderReader reader)
    {
        var (width, height) = (0, 0);
        var scans = 0;
        int? orientation = null;
        var profile = new SortedDictionary<byte, byte[]>();
        Span<byte> frame = stackalloc byte[5];

        while (TryReadMarker(reader, out var marker))
        {
            if (marker == EndOfImage)
            {
                return scans == 0
                    ? ImageHeader.Damaged("it holds no scan")
                    : new ImageHeader.Recognised(ImageKind.Jpeg, width, height, orientation ?? 1) { ColourProfile = Join(profile) };
            }

            if (!TryReadLength(reader, out var length))
            {
                return ImageHeader.Truncated();
            }

            if (length < 0)
            {
                return ImageHeader.Damaged("a segment has no valid length");
            }

            switch (marker)
            {
                case StartOfScan when width == 0:
                    return ImageHeader.Damaged("a scan comes before the size");

                case StartOfScan when ++scans > ImageLimits.MaxScans:
                    return new ImageHeader.Refused(
                        ImageRefusal.TooManyScans,
                        "The progressive JPEG has more than 100 scans, which cameras never write. Save it again as an ordinary JPEG.");

                case 0xC0 or 0xC1 or 0xC2:
                    if (width > 0)
                    {
                        return ImageHeader.Damaged("it gives its size twice");
                    }

                    if (length < frame.Length || !reader.TryRead(frame))
                    {
                        return ImageHeader.Truncated();
                    }

                    length -= frame.Length;
                    height = BinaryPrimitives.ReadUInt16BigEndian(frame[1..]);
                    width = BinaryPrimitives.ReadUInt16BigEndian(frame[3..]);
                    if (ImageHeader.CheckSize(width, height) is { } refused)
                    {
                        return refused;
                    }

                    break;

                case 0xC3 or (>= 0xC5 and <= 0xC7) or (>= 0xC9 and <= 0xCB) or (>= 0xCD and <= 0xCF):
                    return new ImageHeader.Refused(
                        ImageRefusal.FormatNotAccepted,
                        $"This is a lossless, hierarchical or arithmetic-coded JPEG, which is not decoded here. {ImageLimits.Accepted}");

                case App1 or App2:
                    var segment = new byte[length];
                    if (!reader.TryRead(segment))
                    {
                        return ImageHeader.Truncated();
                    }

                    length = 0;
                    if (marker == App1 && segment.AsSpan().StartsWith(ExifOrientation.Prefix))
                    {
                        orientation ??= ExifOrientation.Read(segment);
                    }
                    else if (marker == App2 && segment.AsSpan().StartsWith("ICC_PROFILE\0"u8) && segment.Length > 14)
                    {
                        profile.TryAdd(segment[12], segment[14..]);
                    }

                    break;
            }

            if (!reader.TrySkip(length))
            {
                return ImageHeader.Truncated();
            }
        }

        return ImageHeader.Truncated();
    }

    /// <summary>The next marker that matters, over fill bytes, stuffed zeros, restarts and the entropy-coded data between them.</summary>
    private static bool TryReadMarker(HeaderReader reader, out byte marker)
    {
        marker = 0;
        while (reader.TrySkipPast(0xFF))
        {
            do
            {
                if (!reader.TryReadByte(out marker))
                {
                    return false;
                }
            }
            while (marker == 0xFF);

            if (marker is not (0x00 or 0x01 or StartOfImage or (>= 0xD0 and <= 0xD7)))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Bytes of the segment after its length field; negative when the field is too small to count itself.</summary>
    private static bool TryReadLength(HeaderReader reader, out int length)
    {
        Span<byte> field = stackalloc byte[2];
        var read = reader.TryRead(field);
        length = BinaryPrimitives.ReadUInt16BigEndian(field) - field.Length;
        return read;
    }

    private static byte[]? Join(SortedDictionary<byte, byte[]> pieces) =>
        ColourProfile.Usable(pieces.Values.SelectMany(piece => piece).Take(ImageLimits.MaxColourProfileBytes + 1).ToArray());
}
