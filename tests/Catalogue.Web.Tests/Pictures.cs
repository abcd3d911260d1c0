using System.Buffers.Binary;
using System.IO.Compression;

namespace Catalogue.Web.Tests;

/// <summary>Pictures written byte by byte, so that no picture library is needed to test with.</summary>
internal static class Pictures
{
    private static readonly byte[] Signature = [0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A];

    /// <summary>A grey PNG of that size; the shade makes files differ.</summary>
    public static byte[] Png(int width, int height, byte shade = 128)
    {
        using var rows = new MemoryStream();
        using (var packed = new ZLibStream(rows, CompressionLevel.Fastest, leaveOpen: true))
        {
            var row = new byte[width + 1];
            Array.Fill(row, shade, 1, width);
            for (var y = 0; y < height; y++)
                packed.Write(row);
        }

        return [.. Signature, .. Chunk("IHDR", Header(width, height)), .. Chunk("IDAT", rows.ToArray()), .. Chunk("IEND", [])];
    }

    /// <summary>A PNG that claims that size and holds next to nothing.</summary>
    public static byte[] Claiming(int width, int height) => [.. Signature, .. Chunk("IHDR", Header(width, height)), .. Chunk("IDAT", [0x78, 0x9C, 0x03, 0x00, 0x00, 0x00, 0x00, 0x01]), .. Chunk("IEND", [])];

    private static byte[] Header(int width, int height)
    {
        var header = new byte[13];
        BinaryPrimitives.WriteInt32BigEndian(header, width);
        BinaryPrimitives.WriteInt32BigEndian(header.AsSpan(4), height);
        header[8] = 8;
        return header;
    }

    private static byte[] Chunk(string type, byte[] data)
    {
        var chunk = new byte[12 + data.Length];
        BinaryPrimitives.WriteInt32BigEndian(chunk, data.Length);
        System.Text.Encoding.ASCII.GetBytes(type, chunk.AsSpan(4));
        data.CopyTo(chunk, 8);
        BinaryPrimitives.WriteUInt32BigEndian(chunk.AsSpan(8 + data.Length), Crc(chunk.AsSpan(4, 4 + data.Length)));
        return chunk;
    }

    // PNG's check sum (ISO 3309), bit by bit: slow and short.
    private static uint Crc(ReadOnlySpan<byte> data)
    {
        var crc = 0xFFFFFFFFu;
        foreach (var value in data)
        {
            crc ^= value;
            for (var bit = 0; bit < 8; bit++)
                crc = (crc & 1) != 0 ? (crc >> 1) ^ 0xEDB88320u : crc >> 1;
        }

        return ~crc;
    }
}
