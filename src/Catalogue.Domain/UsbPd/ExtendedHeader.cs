namespace Catalogue.Domain.UsbPd;

/// <summary>The second header of an extended message.</summary>
/// <remarks>Source: USB Power Delivery 3.2, clause 6.2.1.2.</remarks>
/// <param name="Value">The header as a number.</param>
public readonly record struct ExtendedHeader(ushort Value)
{
    /// <summary>A chunk carries at most this many bytes.</summary>
    public const int ChunkSize = 26;

    /// <summary>True where the message comes in chunks.</summary>
    public bool IsChunked => Value >> 15 == 1;

    /// <summary>The number of this chunk, from 0.</summary>
    public int Chunk => Value >> 11 & 0b1111;

    /// <summary>True where a chunk is asked for, not given.</summary>
    public bool IsRequest => (Value >> 10 & 1) == 1;

    /// <summary>Size of the data of all chunks in bytes.</summary>
    public int Size => Value & 0x1FF;
}
