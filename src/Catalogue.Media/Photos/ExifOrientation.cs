using System.Buffers.Binary;

namespace Catalogue.Media.Photos;

/// <summary>Finds the orientation tag (0x0112) in the first directory of an EXIF block (EXIF 2.32, TIFF 6.0), in either byte order.</summary>
internal static class ExifOrientation
{
    private const ushort OrientationTag = 0x0112;
    private const ushort ShortType = 3;
    private const int EntryBytes = 12;

    /// <summary>What stands before the TIFF header in a JPEG segment, and by habit of some programs in WebP too.</summary>
    public static ReadOnlySpan<byte> Prefix => "Exif\0\0"u8;

    /// <summary>1 to 8; 1 (as stored) when the block gives none, an invalid one, or cannot be followed.</summary>
    public static int Read(ReadOnlySpan<byte> block)
    {
        var tiff = block.StartsWith(Prefix) ? block[Prefix.Length..] : block;
        var littleEndian = tiff.StartsWith("II*\0"u8);
        if (tiff.Length < 8 || (!littleEndian && !tiff.StartsWith("MM\0*"u8)))
        {
            return 1;
        }

        var offset = littleEndian ? BinaryPrimitives.ReadUInt32LittleEndian(tiff[4..]) : BinaryPrimitives.ReadUInt32BigEndian(tiff[4..]);
        if (offset > tiff.Length - 2)
        {
            return 1;
        }

        var directory = tiff[(int)offset..];
        var entries = directory[2..];
        for (var left = ReadUInt16(directory); left > 0 && entries.Length >= EntryBytes; left--, entries = entries[EntryBytes..])
        {
            if (ReadUInt16(entries) == OrientationTag)
            {
                var value = ReadUInt16(entries[8..]);
                return ReadUInt16(entries[2..]) == ShortType && value is >= 1 and <= 8 ? value : 1;
            }
        }

        return 1;

        int ReadUInt16(ReadOnlySpan<byte> at) =>
            littleEndian ? BinaryPrimitives.ReadUInt16LittleEndian(at) : BinaryPrimitives.ReadUInt16BigEndian(at);
    }
}
