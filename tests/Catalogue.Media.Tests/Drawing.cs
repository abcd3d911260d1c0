using System.Buffers.Binary;
using System.IO.Compression;
using System.Text;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.Formats;
using SixLabors.ImageSharp.Formats.Jpeg;
using SixLabors.ImageSharp.Formats.Png;
using SixLabors.ImageSharp.Formats.Webp;
using SixLabors.ImageSharp.PixelFormats;

namespace Catalogue.Media.Tests;

/// <summary>Draws test pictures and puts files together byte by byte where an encoder would not.</summary>
internal static class Drawing
{
    public static readonly Rgba32 TopLeft = new(220, 30, 30);
    public static readonly Rgba32 TopRight = new(30, 200, 30);
    public static readonly Rgba32 BottomLeft = new(30, 30, 220);
    public static readonly Rgba32 BottomRight = new(230, 220, 40);

    /// <summary>The smallest block that passes for an RGB colour profile, 132 bytes.</summary>
    public static byte[] RgbProfile => Profile("RGB ");

    /// <summary>Four quadrants of different colours, so that every turn and mirroring shows.</summary>
    public static Rgba32 Quadrant(int x, int y, int width, int height) =>
        y < height / 2 ? (x < width / 2 ? TopLeft : TopRight) : (x < width / 2 ? BottomLeft : BottomRight);

    /// <summary>The quadrants as a camera would store them for this EXIF orientation; upright they are width x height again.</summary>
    public static Image<Rgba32> Stored(int width, int height, int orientation)
    {
        var (w, h) = orientation >= 5 ? (height, width) : (width, height);
        var picture = new Image<Rgba32>(w, h);
        for (var y = 0; y < height; y++)
        {
            for (var x = 0; x < width; x++)
            {
                // Which stored pixel a person sees at x, y: the table of EXIF 2.32, 4.6.4 A (tag 0x0112).
                var (column, row) = orientation switch
                {
                    2 => (w - 1 - x, y),
                    3 => (w - 1 - x, h - 1 - y),
                    4 => (x, h - 1 - y),
                    5 => (y, x),
                    6 => (y, h - 1 - x),
                    7 => (w - 1 - y, h - 1 - x),
                    8 => (w - 1 - y, x),
                    _ => (x, y),
                };
                picture[column, row] = Quadrant(x, y, width, height);
            }
        }

        return picture;
    }

    public static byte[] Jpeg(int width, int height, int orientation = 1)
    {
        using var picture = Stored(width, height, orientation);
        return Jpeg(picture);
    }

    public static byte[] Jpeg(Image picture) => Encode(picture, new JpegEncoder { Quality = 95 });

    public static byte[] Png(int width, int height)
    {
        using var picture = Stored(width, height, 1);
        return Encode(picture, new PngEncoder());
    }

    public static byte[] Webp(int width, int height, bool lossless)
    {
        using var picture = Stored(width, height, 1);
        return Encode(picture, new WebpEncoder { FileFormat = lossless ? WebpFileFormatType.Lossless : WebpFileFormatType.Lossy });
    }

    public static byte[] Encode(Image picture, IImageEncoder encoder)
    {
        using var stream = new MemoryStream();
        picture.Save(stream, encoder);
        return stream.ToArray();
    }

    /// <summary>An EXIF block (TIFF header and one directory with the orientation alone) in either byte order.</summary>
    public static byte[] Exif(int orientation, bool bigEndian)
    {
        var block = new byte[26];
        (bigEndian ? "MM\0*"u8 : "II*\0"u8).CopyTo(block);
        UInt32(4, 8);
        UInt16(8, 1);
        UInt16(10, 0x0112);
        UInt16(12, 3);
        UInt32(14, 1);
        UInt16(18, (ushort)orientation);
        return block;

        void UInt16(int at, ushort value)
        {
            if (bigEndian)
            {
                BinaryPrimitives.WriteUInt16BigEndian(block.AsSpan(at), value);
            }
            else
            {
                BinaryPrimitives.WriteUInt16LittleEndian(block.AsSpan(at), value);
            }
        }

        void UInt32(int at, uint value)
        {
            if (bigEndian)
            {
                BinaryPrimitives.WriteUInt32BigEndian(block.AsSpan(at), value);
            }
            else
            {
                BinaryPrimitives.WriteUInt32LittleEndian(block.AsSpan(at), value);
            }
        }
    }

    /// <summary>A colour profile of this colour space (four characters) with a header and nothing else.</summary>
    public static byte[] Profile(string colourSpace)
    {
        var profile = new byte[132];
        BinaryPrimitives.WriteUInt32BigEndian(profile, (uint)profile.Length);
        profile[8] = 4;
        Encoding.ASCII.GetBytes("mntr" + colourSpace + "XYZ ").CopyTo(profile, 12);
        "acsp"u8.CopyTo(profile.AsSpan(36));
        return profile;
    }

    /// <summary>The JPEG with a segment of this marker right after its start.</summary>
    public static byte[] WithSegment(byte[] jpeg, byte marker, params ReadOnlySpan<byte> content)
    {
        var length = content.Length + 2;
        return [.. jpeg[..2], 0xFF, marker, (byte)(length >> 8), (byte)length, .. content, .. jpeg[2..]];
    }

    public static byte[] WithExif(byte[] jpeg, int orientation, bool bigEndian = false) =>
        WithSegment(jpeg, 0xE1, [.. "Exif\0\0"u8, .. Exif(orientation, bigEndian)]);

    public static byte[] WithProfile(byte[] jpeg, byte[] profile) => WithSegment(jpeg, 0xE2, [.. "ICC_PROFILE\0"u8, 1, 1, .. profile]);

    /// <summary>The JPEG with its scan repeated, as a scan bomb does.</summary>
    public static byte[] WithScans(byte[] jpeg, int scans)
    {
        var start = jpeg.AsSpan().IndexOf<byte>([0xFF, 0xDA]);
        var scan = jpeg[start..^2];
        return [.. jpeg[..start], .. Enumerable.Repeat(scan, scans).SelectMany(bytes => bytes), 0xFF, 0xD9];
    }

    /// <summary>The PNG with a chunk right after its size.</summary>
    public static byte[] WithChunk(byte[] png, string type, byte[] data) => [.. png[..33], .. Chunk(type, data), .. png[33..]];

    public static byte[] Chunk(string type, byte[] data)
    {
        byte[] body = [.. Encoding.ASCII.GetBytes(type), .. data];
        var chunk = new byte[body.Length + 8];
        BinaryPrimitives.WriteInt32BigEndian(chunk, data.Length);
        body.CopyTo(chunk, 4);
        BinaryPrimitives.WriteUInt32BigEndian(chunk.AsSpan(body.Length + 4), Checksum(body));
        return chunk;
    }

    /// <summary>A PNG that says it has this size, with pixels that do not matter.</summary>
    public static byte[] PngClaiming(uint width, uint height)
    {
        var header = new byte[13];
        BinaryPrimitives.WriteUInt32BigEndian(header, width);
        BinaryPrimitives.WriteUInt32BigEndian(header.AsSpan(4), height);
        header[8] = 8;
        return [0x89, .. "PNG\r\n"u8, 0x1A, 0x0A, .. Chunk("IHDR", header), .. Chunk("IDAT", Deflated(new byte[64])), .. Chunk("IEND", [])];
    }

    public static byte[] Deflated(byte[] data)
    {
        using var packed = new MemoryStream();
        using (var zlib = new ZLibStream(packed, CompressionLevel.Fastest))
        {
            zlib.Write(data);
        }

        return packed.ToArray();
    }

    /// <summary>A WebP file of these chunks.</summary>
    public static byte[] Riff(params (string Type, byte[] Data)[] chunks)
    {
        using var body = new MemoryStream();
        body.Write("WEBP"u8);
        foreach (var (type, data) in chunks)
        {
            body.Write(Encoding.ASCII.GetBytes(type));
            body.Write(BitConverter.GetBytes(data.Length));
            body.Write(data);
            if (data.Length % 2 == 1)
            {
                body.WriteByte(0);
            }
        }

        return [.. "RIFF"u8, .. BitConverter.GetBytes((int)body.Length), .. body.ToArray()];
    }

    /// <summary>The VP8X chunk of a canvas this large.</summary>
    public static byte[] Canvas(int width, int height, byte flags = 0) =>
        [flags, 0, 0, 0, .. BitConverter.GetBytes(width - 1)[..3], .. BitConverter.GetBytes(height - 1)[..3]];

    /// <summary>The picture chunk of a simple WebP file: its type and data.</summary>
    public static (string Type, byte[] Data) PictureChunk(byte[] webp)
    {
        for (var at = 12; at < webp.Length;)
        {
            var type = Encoding.ASCII.GetString(webp, at, 4);
            var length = BitConverter.ToInt32(webp, at + 4);
            if (type is "VP8 " or "VP8L")
            {
                return (type, webp[(at + 8)..(at + 8 + length)]);
            }

            at += 8 + length + (length & 1);
        }

        throw new ArgumentException("No picture in this file.", nameof(webp));
    }

    /// <summary>Whether two colours are the same to the eye after JPEG.</summary>
    public static bool Close(Rgba32 one, Rgba32 other) =>
        Math.Abs(one.R - other.R) < 24 && Math.Abs(one.G - other.G) < 24 && Math.Abs(one.B - other.B) < 24;

    private static uint Checksum(byte[] data)
    {
        var sum = uint.MaxValue;
        foreach (var value in data)
        {
            sum ^= value;
            for (var bit = 0; bit < 8; bit++)
            {
                sum = (sum & 1) != 0 ? (sum >> 1) ^ 0xEDB88320 : sum >> 1;
            }
        }

        return ~sum;
    }
}
