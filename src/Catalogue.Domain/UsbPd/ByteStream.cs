using System.Buffers;
using System.Buffers.Binary;
using System.Globalization;

namespace Catalogue.Domain.UsbPd;

/// <summary>Neighbouring groups of hexadecimal digits in a line, as bytes.</summary>
internal sealed class ByteStream
{
    private const int FewestBytes = 6;

    private static readonly SearchValues<char> Separators = SearchValues.Create(" \t,:;-\"'");

    private readonly List<DumpToken> _groups;
    private readonly bool _beginsWithOffset;

    private ByteStream(List<DumpToken> groups, bool beginsWithOffset)
    {
        (_groups, _beginsWithOffset) = (groups, beginsWithOffset);
        Bytes = BytesOf(groups);
    }

    /// <summary>All bytes; a half byte at the end of a cut line is left out.</summary>
    public byte[] Bytes { get; }

    /// <summary>The bytes without the offset that a hexadecimal dump puts before each line.</summary>
    public byte[] WithoutOffset => _beginsWithOffset ? BytesOf(_groups[1..]) : Bytes;

    /// <summary>True where the digits may as well be words in a row.</summary>
    public bool CouldBeWords => _groups.TrueForAll(group => group.Digits!.Length == 8);

    /// <summary>True for digits in one piece that are too many for a word.</summary>
    public bool IsOnePiece => _groups.Exists(group => group.Digits!.Length > 11);

    /// <summary>True where the digits can hardly be anything but bytes, such as a date and a time.</summary>
    public bool IsSurelyBytes => IsOnePiece || (_groups.TrueForAll(group => group.Digits!.Length == 2) && _groups.Exists(group => group.Digits!.Any(char.IsAsciiLetter)));

    /// <summary>The objects where the bytes are objects without a header: whole words, the first of them 5 V. Null else.</summary>
    public (IEnumerable<uint> Words, bool IsLittleEndian)? Objects
    {
        get
        {
            var bytes = WithoutOffset;
            if (CouldBeWords || bytes.Length < 4 || bytes.Length % 4 != 0)
                return null;
            if (CapabilityWord.IsFiveVolts(BinaryPrimitives.ReadUInt32LittleEndian(bytes)))
                return (bytes.Chunk(4).Select(word => BinaryPrimitives.ReadUInt32LittleEndian(word)), true);
            return CapabilityWord.IsFiveVolts(BinaryPrimitives.ReadUInt32BigEndian(bytes)) ? (bytes.Chunk(4).Select(word => BinaryPrimitives.ReadUInt32BigEndian(word)), false) : null;
        }
    }

    /// <summary>The streams of a line, each of six bytes at least.</summary>
    public static List<ByteStream> Of(string line, List<DumpToken> tokens)
    {
        var streams = new List<ByteStream>();
        var groups = new List<DumpToken>();
        foreach (var token in tokens)
        {
            if (groups.Count > 0 && !(IsGroup(token) && IsSeparator(line, groups[^1].End, token)))
                Take();
            if (IsGroup(token))
                groups.Add(token);
        }

        Take();
        return streams;

        void Take()
        {
            if (groups.Sum(group => group.Digits!.Length) / 2 >= FewestBytes)
                streams.Add(new ByteStream([.. groups], BeginsWithOffset(line, groups)));
            groups.Clear();
        }
    }

    // Bytes stand in groups of an even number of digits; a long run may have lost its last digit.
    private static bool IsGroup(DumpToken token) => token.Digits is { Length: var length } && (length > 11 || length is 2 or 4 or 6 or 8) && (!token.IsMarked || length is 2 or > 11);

    private static bool IsSeparator(string line, int from, DumpToken token)
    {
        var between = line.AsSpan(from, token.Start - from);
        return between.Length <= 6 && between.IndexOfAnyExcept(Separators) < 0;
    }

    private static bool BeginsWithOffset(string line, List<DumpToken> groups) =>
        groups.Count > 1 && groups[0].Digits!.Length is 4 or 6 or 8 && (line.AsSpan(groups[0].End).StartsWith(":") || groups.TrueForAll(group => group == groups[0] || group.Digits!.Length == 2));

    private static byte[] BytesOf(List<DumpToken> groups)
    {
        var bytes = new byte[groups.Sum(group => group.Digits!.Length / 2)];
        var count = 0;
        foreach (var group in groups)
            for (var i = 0; i + 1 < group.Digits!.Length; i += 2)
                bytes[count++] = byte.Parse(group.Digits.AsSpan(i, 2), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture);
        return bytes;
    }
}
