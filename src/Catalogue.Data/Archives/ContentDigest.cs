using System.Buffers.Binary;
using System.Security.Cryptography;

namespace Catalogue.Data.Archives;

/// <summary>
/// A digest of records in any order: the sums, lane by lane, of their SHA-256. It tells whether two sets hold the same, and costs no memory, however many there are.
/// It is no protection against somebody who seeks two sets of one digest; nothing is decided by it but whether to say that something differs.
/// </summary>
internal sealed class ContentDigest
{
    private readonly ulong[] _lanes = new ulong[4];

    /// <summary>How many records.</summary>
    public int Count { get; private set; }

    /// <summary>Takes a record in.</summary>
    public void Add(ReadOnlySpan<byte> record)
    {
        Span<byte> digest = stackalloc byte[SHA256.HashSizeInBytes];
        SHA256.HashData(record, digest);
        for (var lane = 0; lane < _lanes.Length; lane++)
            _lanes[lane] = unchecked(_lanes[lane] + BinaryPrimitives.ReadUInt64LittleEndian(digest[(8 * lane)..]));
        Count++;
    }

    /// <summary>True when both took in the same.</summary>
    public bool IsSame(ContentDigest? other) => other is null ? Count == 0 : Count == other.Count && _lanes.AsSpan().SequenceEqual(other._lanes);
}
