using System.Text;

namespace Catalogue.Media.Photos;

/// <summary>
/// Carries the bytes of a zip entry's name through the base library, which wants to decode them one by one before the encoding of all can be found:
/// ASCII stays, any other byte becomes a character of the private use area. Names that say they are UTF-8 never come here.
/// </summary>
internal sealed class RawNames : Encoding
{
    private const char Offset = '\uF700';

    private RawNames()
    {
    }

    public static RawNames Instance { get; } = new();

    /// <summary>The bytes of a name; null for one that was decoded already, as it holds a character that no byte became.</summary>
    public static byte[]? BytesOf(string name)
    {
        var bytes = new byte[name.Length];
        for (var i = 0; i < name.Length; i++)
        {
            if (name[i] < 0x80)
                bytes[i] = (byte)name[i];
            else if (name[i] is >= (char)(Offset + 0x80) and <= (char)(Offset + 0xFF))
                bytes[i] = (byte)(name[i] - Offset);
            else
                return null;
        }

        return bytes;
    }

    public override int GetByteCount(char[] chars, int index, int count) => count;

    public override int GetBytes(char[] chars, int charIndex, int charCount, byte[] bytes, int byteIndex) => throw new NotSupportedException("Names are only read.");

    public override int GetCharCount(byte[] bytes, int index, int count) => count;

    public override int GetChars(byte[] bytes, int byteIndex, int byteCount, char[] chars, int charIndex)
    {
        for (var i = 0; i < byteCount; i++)
            chars[charIndex + i] = bytes[byteIndex + i] < 0x80 ? (char)bytes[byteIndex + i] : (char)(Offset + bytes[byteIndex + i]);
        return byteCount;
    }

    public override int GetMaxByteCount(int charCount) => charCount;

    public override int GetMaxCharCount(int byteCount) => byteCount;
}
