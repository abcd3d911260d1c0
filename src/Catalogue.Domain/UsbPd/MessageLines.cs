using System.Buffers.Binary;

namespace Catalogue.Domain.UsbPd;

/// <summary>Finds messages in the bytes of a text's lines, joins what goes over several lines or comes in chunks, and gives their lists.</summary>
/// <param name="give">Takes each list.</param>
/// <param name="warnings">Takes what a person should look at.</param>
/// <param name="notes">Takes how the bytes were read.</param>
internal sealed class MessageLines(Action<ListRun> give, List<string> warnings, List<string> notes)
{
    // Far more than the longest message; what is longer was never one.
    private const int LongestPending = 512;

    private readonly Dictionary<PortRole, ChunkedList> _chunks = [];
    private byte[]? _pending;
    private int _pendingLine;
    private int _lineNumber;

    /// <summary>How many lines hold bytes of no capability message.</summary>
    public int OtherLines { get; private set; }

    /// <summary>The first of them.</summary>
    public int FirstOtherLine { get; private set; }

    /// <summary>Takes a line.</summary>
    /// <param name="line">The line.</param>
    /// <param name="tokens">Its runs of letters and digits.</param>
    /// <param name="number">Its number, from 1.</param>
    /// <returns>True where its bytes were taken; it holds no words then.</returns>
    public bool Take(string line, List<DumpToken> tokens, int number)
    {
        _lineNumber = number;
        var streams = ByteStream.Of(line, tokens);
        if (streams.Count == 0)
        {
            Flush();
            return false;
        }

        var taken = false;
        foreach (var stream in streams)
            taken |= TakeStream(stream);
        return taken;
    }

    private bool TakeStream(ByteStream stream)
    {
        var (bytes, message) = (stream.WithoutOffset, WireMessage.Find(stream.WithoutOffset));
        if (message is null)
            (bytes, message) = (stream.Bytes, WireMessage.Find(stream.Bytes));
        if (message is { IsCut: false, Data.Length: > 0 } or { Extended.IsRequest: true })
        {
            Flush();
            TakeMessage(message, _lineNumber);
            return true;
        }

        if (_pending is { } before && before.Length < LongestPending)
        {
            byte[] joined = [.. before, .. stream.WithoutOffset.AsSpan(0, Math.Min(stream.WithoutOffset.Length, LongestPending))];
            if (WireMessage.Find(joined) is { } longer)
            {
                _pending = longer.IsCut ? joined : null;
                if (!longer.IsCut)
                    TakeMessage(longer, _pendingLine);
                return true;
            }
        }

        Flush();
        if (message is not null)
        {
            (_pending, _pendingLine) = (bytes[..Math.Min(bytes.Length, LongestPending)], _lineNumber);
            return true;
        }

        if (stream.Objects is { } objects)
        {
            var run = new ListRun(PortRole.Source, WordOrigin.Bytes, _lineNumber);
            foreach (var word in objects.Words.Take(ListRun.Longest))
                run.Add(word, null);
            give(run);
            notes.Add(CapabilityText.Say($"The bytes in line {_lineNumber} have no header; they were read as objects, {(objects.IsLittleEndian ? "least" : "most")} significant byte first."));
            return true;
        }

        if (stream.IsSurelyBytes && OtherLines++ == 0)
            FirstOtherLine = _lineNumber;
        return stream.IsOnePiece;
    }

    /// <summary>Nothing follows that could belong to a message that broke off.</summary>
    public void Flush()
    {
        if (_pending is { } bytes && WireMessage.Find(bytes) is { } message)
            TakeMessage(message, _pendingLine);
        _pending = null;
    }

    private void TakeMessage(WireMessage message, int line)
    {
        if (message.Offset > 0)
            warnings.Add(CapabilityText.Say($"The first {message.Offset} {(message.Offset == 1 ? "byte" : "bytes")} in line {line} are the capture's own prefix and were skipped."));
        if (message.Crc == WireCrc.Right)
            warnings.Add(CapabilityText.Say($"The 4 bytes after the last object in line {line} are the CRC-32 of the message and match it; they are no object."));
        else if (message.Crc == WireCrc.Wrong)
            warnings.Add(CapabilityText.Say($"The 4 bytes after the last object in line {line} were read as its CRC-32, but do not match it: a byte of the message may be wrong."));
        else if (message.Trailing > 0)
            warnings.Add(CapabilityText.Say($"{message.Trailing} {(message.Trailing == 1 ? "byte" : "bytes")} after the last object in line {line} were not read."));
        var role = message.Header.Capabilities!.Value;
        if (message.Extended is { IsRequest: true })
        {
            warnings.Add(CapabilityText.Say($"Line {line} is the request for a chunk and carries no objects; it was ignored."));
            return;
        }

        notes.Add(CapabilityText.Say($"The bytes in line {line} were read as little-endian, with header 0x{message.Header.Value:X4} (revision {message.Header.Revision})."));
        if (message.Extended is { IsChunked: true } extended)
        {
            TakeChunk(role, extended, message, line);
            return;
        }

        Give(new ListRun(role, WordOrigin.Bytes, line) { Announced = message.Length / 4 }, message.Data);
    }

    private void TakeChunk(PortRole role, ExtendedHeader extended, WireMessage message, int line)
    {
        if (_chunks.TryGetValue(role, out var chunked) && (extended.Chunk != chunked.Next || extended.Size != chunked.Size))
        {
            // The same chunk sent again changes nothing; chunk 0 begins another message.
            if (extended.Chunk != 0 && extended.Chunk == chunked.Next - 1 && extended.Size == chunked.Size)
                return;
            _chunks.Remove(role);
            GiveChunks(role, chunked);
            chunked = null;
        }

        if (chunked is null)
        {
            if (extended.Chunk != 0)
            {
                warnings.Add(CapabilityText.Say($"Line {line} is chunk {extended.Chunk} of a message whose beginning is missing; it was left out."));
                return;
            }

            _chunks[role] = chunked = new ChunkedList(extended.Size, line);
        }

        chunked.Add(message.Data);
        if (chunked.IsComplete || message.IsCut)
        {
            _chunks.Remove(role);
            GiveChunks(role, chunked);
        }
    }

    private void GiveChunks(PortRole role, ChunkedList chunked)
    {
        if (chunked.Next > 1)
            warnings.Add(CapabilityText.Say($"{chunked.Next} chunks from line {chunked.Line} on were joined to one message of {chunked.Data.Count} bytes."));
        Give(new ListRun(role, WordOrigin.Bytes, chunked.Line) { Announced = chunked.Size / 4 }, [.. chunked.Data]);
    }

    private void Give(ListRun run, byte[] data)
    {
        for (var i = 0; i + 4 <= data.Length; i += 4)
            run.Add(BinaryPrimitives.ReadUInt32LittleEndian(data.AsSpan(i)), null);
        if (data.Length % 4 != 0)
            run.Damage(CapabilityText.Say($"{data.Length % 4} bytes"), "The message breaks off inside it.");
        give(run);
    }

    /// <summary>The text is over: gives what broke off.</summary>
    public void Finish()
    {
        Flush();
        foreach (var (role, chunked) in _chunks)
            GiveChunks(role, chunked);
    }
}
