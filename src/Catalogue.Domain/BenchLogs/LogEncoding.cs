using System.Buffers;
using System.Text;
using System.Text.Unicode;
using Catalogue.Domain.Components.Lists;

namespace Catalogue.Domain.BenchLogs;

/// <summary>The encoding of a log, watched to its end: a log that is ASCII for an hour may end in a remark with an umlaut.</summary>
internal sealed class LogEncoding
{
    private const int LongestTail = 3;

    private readonly byte[] _tail = new byte[LongestTail];
    private int _tailLength;
    private bool _hasWideLetters;
    private bool _isBroken;

    /// <summary>The encoding with two or four bytes a character, or null.</summary>
    public Encoding? Wide { get; private set; }

    /// <summary>The encoding of the bytes that are read.</summary>
    public Encoding Text { get; private set; } = Encoding.UTF8;

    /// <summary>Its IANA name.</summary>
    public string Name { get; private set; } = "UTF-8";

    /// <summary>What is doubtful about it, or null.</summary>
    public string? Doubt { get; private set; }

    public void TakeWide(Encoding encoding, string name, bool isGuess)
    {
        (Wide, Name) = (encoding, name);
        if (isGuess)
            Doubt = $"The log does not say its encoding; {name} was taken from the pattern of its bytes.";
    }

    /// <summary>Looks at the next bytes.</summary>
    public void Look(ReadOnlySpan<byte> bytes)
    {
        if (Wide is not null || _isBroken || (_tailLength == 0 && Ascii.IsValid(bytes)))
            return;
        var hadWideLetters = _hasWideLetters;
        _hasWideLetters = true;
        if (IsUtf8(bytes))
            return;
        _isBroken = true;
        if (hadWideLetters)
        {
            Doubt = "The text is UTF-8 with damaged places.";
            return;
        }

        var (encoding, name) = ListText.LegacyGuess(bytes);
        // Of the two that share the upper half, Windows-1252 has letters where the other has controls.
        (Text, Name) = name == "ISO-8859-1" ? (CodePagesEncodingProvider.Instance.GetEncoding(1252)!, "windows-1252") : (encoding, name);
        if (Name != "windows-1252")
            Doubt = $"The log does not say its encoding; {Name} is a guess.";
    }

    // A character may be cut in two by the border between two blocks.
    private bool IsUtf8(ReadOnlySpan<byte> bytes)
    {
        if (_tailLength > 0)
        {
            Span<byte> joined = stackalloc byte[2 * LongestTail];
            _tail.AsSpan(0, _tailLength).CopyTo(joined);
            var more = Math.Min(LongestTail, bytes.Length);
            bytes[..more].CopyTo(joined[_tailLength..]);
            var status = Rune.DecodeFromUtf8(joined[..(_tailLength + more)], out _, out var used);
            if (status == OperationStatus.InvalidData)
                return false;
            if (status == OperationStatus.NeedMoreData)
                return Keep(joined[..(_tailLength + more)]);
            bytes = bytes[(used - _tailLength)..];
            _tailLength = 0;
        }

        var whole = bytes.Length;
        for (var back = 1; back <= Math.Min(LongestTail, bytes.Length); back++)
        {
            var lead = bytes[^back];
            if ((lead & 0xC0) == 0x80)
                continue;
            if (lead >= 0xC0 && Rune.DecodeFromUtf8(bytes[^back..], out _, out _) == OperationStatus.NeedMoreData)
                whole -= back;
            break;
        }

        return Utf8.IsValid(bytes[..whole]) && Keep(bytes[whole..]);
    }

    private bool Keep(ReadOnlySpan<byte> tail)
    {
        if (tail.Length > LongestTail)
            return false;
        tail.CopyTo(_tail);
        _tailLength = tail.Length;
        return true;
    }
}
