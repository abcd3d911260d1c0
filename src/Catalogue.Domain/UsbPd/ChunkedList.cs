namespace Catalogue.Domain.UsbPd;

/// <summary>The chunks of an extended message as they come in.</summary>
/// <param name="size">Bytes of all chunks.</param>
/// <param name="line">The line of the first chunk.</param>
internal sealed class ChunkedList(int size, int line)
{
    /// <summary>Bytes of all chunks.</summary>
    public int Size => size;

    /// <summary>The line of the first chunk.</summary>
    public int Line => line;

    /// <summary>The bytes so far.</summary>
    public List<byte> Data { get; } = [];

    /// <summary>The number of the chunk that has to follow.</summary>
    public int Next { get; private set; }

    /// <summary>True once all is there.</summary>
    public bool IsComplete => Data.Count >= size;

    /// <summary>Takes the next chunk.</summary>
    public void Add(byte[] data)
    {
        Data.AddRange(data.AsSpan(0, Math.Min(data.Length, size - Data.Count)));
        Next++;
    }
}
