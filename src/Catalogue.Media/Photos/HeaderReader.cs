namespace Catalogue.Media.Photos;

/// <summary>Forward reading of a seekable stream with a small buffer; every method says whether the bytes were there.</summary>
internal sealed class HeaderReader(Stream stream)
{
    private readonly byte[] _buffer = new byte[64 * 1024];
    private int _next;
    private int _end;

    /// <summary>Bytes from here to the end of the stream.</summary>
    public long Remaining => stream.Length - stream.Position + (_end - _next);

    /// <summary>The bytes ahead, as many as the buffer holds, without moving on.</summary>
    public ReadOnlySpan<byte> Peek()
    {
        Fill();
        return _buffer.AsSpan(_next, _end - _next);
    }

    public bool TryReadByte(out byte value)
    {
        if (!Fill())
        {
            value = 0;
            return false;
        }

        value = _buffer[_next++];
        return true;
    }

    public bool TryRead(Span<byte> target)
    {
        while (!target.IsEmpty)
        {
            if (!Fill())
            {
                return false;
            }

            var count = Math.Min(target.Length, _end - _next);
            _buffer.AsSpan(_next, count).CopyTo(target);
            _next += count;
            target = target[count..];
        }

        return true;
    }

    public bool TrySkip(long count)
    {
        if (count > Remaining)
        {
            return false;
        }

        var buffered = (int)Math.Min(count, _end - _next);
        _next += buffered;
        if (count > buffered)
        {
            stream.Seek(count - buffered, SeekOrigin.Current);
        }

        return true;
    }

    /// <summary>Moves on to just past the next byte of this value.</summary>
    public bool TrySkipPast(byte value)
    {
        while (Fill())
        {
            var at = _buffer.AsSpan(_next, _end - _next).IndexOf(value);
            if (at >= 0)
            {
                _next += at + 1;
                return true;
            }

            _next = _end;
        }

        return false;
    }

    private bool Fill()
    {
        if (_next < _end)
        {
            return true;
        }

        _next = 0;
        _end = stream.ReadAtLeast(_buffer, _buffer.Length, throwOnEndOfStream: false);
        return _end > 0;
    }
}
