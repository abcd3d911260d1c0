namespace Catalogue.Media.Tests.Photos;

/// <summary>An upload that gives its first bytes and then does something else, such as throw.</summary>
internal sealed class BreakingStream(byte[] first, Action then) : Stream
{
    private bool _given;

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    public override int Read(byte[] buffer, int offset, int count)
    {
        if (_given)
        {
            then();
            return 0;
        }

        _given = true;
        first.CopyTo(buffer, offset);
        return first.Length;
    }

    public override ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default)
    {
        cancellationToken.ThrowIfCancellationRequested();
        var bytes = new byte[Math.Max(buffer.Length, first.Length)];
        var count = Read(bytes, 0, bytes.Length);
        bytes.AsMemory(0, count).CopyTo(buffer);
        return ValueTask.FromResult(count);
    }

    public override void Flush() => throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}
