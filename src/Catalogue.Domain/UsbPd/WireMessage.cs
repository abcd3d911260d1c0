using System.Buffers.Binary;

namespace Catalogue.Domain.UsbPd;

/// <summary>A message found in the bytes of a line.</summary>
/// <param name="Header">Its header.</param>
/// <param name="Offset">How many bytes stood before it.</param>
/// <param name="Data">What it carries: the objects of a data message, one chunk or the whole of an extended one. Shorter than announced where the line is cut.</param>
/// <param name="Length">How many bytes it announces there.</param>
/// <param name="Extended">The extended header; null for a data message.</param>
/// <param name="Crc">What the bytes after it are.</param>
/// <param name="Trailing">How many bytes after it are of nothing known.</param>
internal sealed record WireMessage(MessageHeader Header, int Offset, byte[] Data, int Length, ExtendedHeader? Extended, WireCrc Crc, int Trailing)
{
    // A capture puts a few bytes of its own before a message: time, length, kind of packet.
    private const int LongestPrefix = 24;
    private const int HeaderSize = 2;
    private const int CrcSize = 4;
    private const int LongestExtendedData = 260;

    /// <summary>Less than announced is there.</summary>
    public bool IsCut => Data.Length < Length;

    /// <summary>
    /// The capability message in the bytes of one line: at their beginning or behind the prefix of a capture. Null where there is none. A message
    /// whose first object is not 5 V is taken only where its length is exact, so that nothing is read out of noise.
    /// </summary>
    public static WireMessage? Find(ReadOnlySpan<byte> bytes)
    {
        WireMessage? best = null;
        for (var offset = 0; offset <= Math.Min(LongestPrefix, bytes.Length - HeaderSize); offset++)
            if (At(bytes, offset) is { } found && (best is null || found.Rank > best.Rank))
                best = found;
        return best?.Rank > 0 ? best : null;
    }

    // What speaks for a reading: it begins with 5 V, its length is exact, its check sum is right, nothing stands before it.
    private int Rank
    {
        get
        {
            var isChunkInTheMiddle = Extended is { } extended && (extended.Chunk > 0 || extended.IsRequest);
            var beginsWithFive = Data.Length >= 4 && CapabilityWord.IsFiveVolts(BinaryPrimitives.ReadUInt32LittleEndian(Data));
            var isExact = !IsCut && Trailing == 0;
            if (isChunkInTheMiddle)
                return isExact && Offset == 0 ? 6 : 0;
            // Six bytes that fit one object may as well be a network address.
            if (!beginsWithFive && !(isExact && (Crc == WireCrc.Right || (Offset == 0 && Length > 4))))
                return 0;
            return (beginsWithFive ? 8 : 0) + (isExact ? 4 : IsCut ? 0 : 1) + (Crc == WireCrc.Right ? 8 : 0) + (Offset == 0 ? 2 : 1);
        }
    }

    private static WireMessage? At(ReadOnlySpan<byte> bytes, int offset)
    {
        var header = new MessageHeader(BinaryPrimitives.ReadUInt16LittleEndian(bytes[offset..]));
        if (header.Capabilities is null || header.Revision is null)
            return null;
        var rest = bytes[(offset + HeaderSize)..];
        ExtendedHeader? extended = null;
        var (length, room) = (header.ObjectCount * 4, header.ObjectCount * 4);
        if (header.IsExtended)
        {
            if (rest.Length < HeaderSize)
                return null;
            var found = new ExtendedHeader(BinaryPrimitives.ReadUInt16LittleEndian(rest));
            rest = rest[HeaderSize..];
            if (found.Size > LongestExtendedData || (found.IsChunked && header.ObjectCount == 0) || (!found.IsRequest && found.Size % 4 != 0))
                return null;
            extended = found;
            // A chunk is padded to whole objects, of which the extended header takes half of the first.
            (length, room) = !found.IsChunked ? (found.Size, found.Size)
                : found.IsRequest ? (0, (header.ObjectCount * 4) - HeaderSize)
                : (Math.Clamp(found.Size - (found.Chunk * ExtendedHeader.ChunkSize), 0, ExtendedHeader.ChunkSize), (header.ObjectCount * 4) - HeaderSize);
            if (length > room)
                return null;
        }

        if (length == 0 && extended is not { IsRequest: true })
            return null;
        var data = rest[..Math.Min(length, rest.Length)].ToArray();
        var after = rest[Math.Min(room, rest.Length)..];
        var crc = after.Length < CrcSize ? WireCrc.None
            : BinaryPrimitives.ReadUInt32LittleEndian(after) == Crc32(bytes[offset..^after.Length]) ? WireCrc.Right
            : after.Length == CrcSize ? WireCrc.Wrong
            : WireCrc.None;
        return new WireMessage(header, offset, data, length, extended, crc, crc == WireCrc.None ? after.Length : after.Length - CrcSize);
    }

    // IEEE 802.3 CRC-32, as clause 5.6.2 takes it over header and objects.
    private static uint Crc32(ReadOnlySpan<byte> bytes)
    {
        var crc = uint.MaxValue;
        foreach (var value in bytes)
        {
            crc ^= value;
            for (var bit = 0; bit < 8; bit++)
                crc = (crc >> 1) ^ (0xEDB8_8320 & (uint)-(int)(crc & 1));
        }

        return ~crc;
    }
}
