namespace Catalogue.Data.Archives;

/// <summary>
/// Where an archive is written to. The zip library ends entries and its directory with synchronous writes, which a web server does not take; those are held and go
/// out with the next asynchronous write. They are small: the end of an entry, and once the directory.
/// </summary>
/// <param name="target">Written to asynchronously only; not disposed.</param>
internal sealed class ArchiveOutput(Stream target) : Stream
{
    private readonly MemoryStream _held = new();

    /// <inheritdoc />
    public override bool CanRead => false;

    /// <inheritdoc />
    public override bool CanSeek => false;

    /// <inheritdoc />
    public override bool CanWrite => true;

    /// <inheritdoc />
    public override long Length => throw new NotSupportedException();

    /// <inheritdoc />
    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    /// <inheritdoc />
    public override void Write(byte[] buffer, int offset, int count) => _held.Write(buffer, offset, count);

    /// <inheritdoc />
    public override void Write(ReadOnlySpan<byte> buffer) => _held.Write(buffer);

    /// <inheritdoc />
    public override async ValueTask WriteAsync(ReadOnlyMemory<byte> buffer, CancellationToken cancellationToken = default)
    {
        await LetGoAsync(cancellationToken);
        await target.WriteAsync(buffer, cancellationToken);
    }

    /// <inheritdoc />
    public override Task WriteAsync(byte[] buffer, int offset, int count, CancellationToken cancellationToken) => WriteAsync(buffer.AsMemory(offset, count), cancellationToken).AsTask();

    /// <inheritdoc />
    public override void Flush()
    {
    }

    /// <inheritdoc />
    public override async Task FlushAsync(CancellationToken cancellationToken)
    {
        await LetGoAsync(cancellationToken);
        await target.FlushAsync(cancellationToken);
    }

    /// <inheritdoc />
    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    /// <inheritdoc />
    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    /// <inheritdoc />
    public override void SetLength(long value) => throw new NotSupportedException();

    private async ValueTask LetGoAsync(CancellationToken cancellationToken)
    {
        if (_held.Length == 0)
            return;
        await target.WriteAsync(_held.GetBuffer().AsMemory(0, (int)_held.Length), cancellationToken);
        _held.SetLength(0);
    }
}
