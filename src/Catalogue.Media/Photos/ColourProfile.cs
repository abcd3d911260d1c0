using System.IO.Compression;

namespace Catalogue.Media.Photos;

/// <summary>
/// Decides which embedded colour profile (ICC.1:2022) a rendition may carry on. Renditions are RGB, so a CMYK or grey profile would
/// lie about them; and a profile that is long or malformed is dropped, never a reason to refuse the photo.
/// </summary>
internal static class ColourProfile
{
    private const int HeaderBytes = 128;

    /// <summary>The profile itself, or null when it must not be carried on.</summary>
    public static byte[]? Usable(byte[] profile) =>
        profile.Length is >= HeaderBytes and <= ImageLimits.MaxColourProfileBytes
            && profile.AsSpan(16, 4).SequenceEqual("RGB "u8)
            && profile.AsSpan(36, 4).SequenceEqual("acsp"u8)
            ? profile
            : null;

    /// <summary>Unpacks an iCCP chunk: a name, a zero, the method, then zlib data. Unpacking stops one byte past the limit.</summary>
    public static byte[]? FromPngChunk(byte[] chunk)
    {
        var data = Array.IndexOf(chunk, (byte)0) + 2;
        if (data < 2 || data > chunk.Length)
        {
            return null;
        }

        try
        {
            using var zlib = new ZLibStream(new MemoryStream(chunk, data, chunk.Length - data), CompressionMode.Decompress);
            var unpacked = new byte[ImageLimits.MaxColourProfileBytes + 1];
            return Usable(unpacked[..zlib.ReadAtLeast(unpacked, unpacked.Length, throwOnEndOfStream: false)]);
        }
        catch (InvalidDataException)
        {
            return null;
        }
    }
}
