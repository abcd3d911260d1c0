using System.Buffers.Binary;
using System.Globalization;

namespace Catalogue.Media.Photos;

/// <summary>
/// Counts the entries of a zip file's directory (APPNOTE.TXT 6.3, 4.3.12 to 4.3.16) before the base library loads them all: it loads as many as there
/// are, whatever number the end of the file states.
/// </summary>
internal static class ZipDirectory
{
    private const int EndBytes = 22;
    private const int MaxCommentBytes = ushort.MaxValue;
    private const int LocatorBytes = 20;
    private const int LargeEndBytes = 56;
    private const int HeaderBytes = 46;

    private const string NoZip = "This is no zip file, or only the beginning of one. Pack the pictures into a zip file and send the whole of it.";

    /// <summary>Why a file is not to be opened, or null.</summary>
    public static string? Check(Stream file, int maxEntries)
    {
        var tail = new byte[(int)Math.Min(file.Length, EndBytes + MaxCommentBytes)];
        file.Position = file.Length - tail.Length;
        file.ReadExactly(tail);
        var end = tail.AsSpan().LastIndexOf("PK\x05\x06"u8);
        if (end < 0 || tail.Length - end < EndBytes)
            return NoZip;
        var directory = StartOfDirectory(file, file.Length - tail.Length + end, tail.AsSpan(end));
        if (directory < 0 || directory > file.Length)
            return NoZip;
        var reader = new HeaderReader(file);
        file.Position = directory;
        Span<byte> header = stackalloc byte[HeaderBytes];
        for (var entries = 0; reader.TryRead(header) && header.StartsWith("PK\x01\x02"u8); entries++)
        {
            if (entries == maxEntries)
                return string.Create(CultureInfo.InvariantCulture, $"The zip file has more than {maxEntries} entries; send them in several files.");
            var rest = BinaryPrimitives.ReadUInt16LittleEndian(header[28..]) + BinaryPrimitives.ReadUInt16LittleEndian(header[30..]) + BinaryPrimitives.ReadUInt16LittleEndian(header[32..]);
            if (!reader.TrySkip(rest))
                return NoZip;
        }

        return null;
    }

    // Large files (Zip64) keep the place in a record of their own, found by a locator in front of the usual one.
    private static long StartOfDirectory(Stream file, long endAt, ReadOnlySpan<byte> end)
    {
        long start = BinaryPrimitives.ReadUInt32LittleEndian(end[16..]);
        if (start != uint.MaxValue || endAt < LocatorBytes)
            return start;
        Span<byte> large = stackalloc byte[LargeEndBytes];
        file.Position = endAt - LocatorBytes;
        file.ReadExactly(large[..LocatorBytes]);
        if (!large.StartsWith("PK\x06\x07"u8))
            return start;
        var at = BinaryPrimitives.ReadInt64LittleEndian(large[8..]);
        if (at < 0 || at > file.Length - LargeEndBytes)
            return -1;
        file.Position = at;
        file.ReadExactly(large);
        return large.StartsWith("PK\x06\x06"u8) ? BinaryPrimitives.ReadInt64LittleEndian(large[48..]) : -1;
    }
}
