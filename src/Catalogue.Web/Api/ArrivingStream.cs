namespace Catalogue.Web.Api;

/// <summary>A file while it arrives: that it broke off is the sender's fault, told apart from a fault of our own disk.</summary>
/// <param name="body">What arrives.</param>
internal sealed class ArrivingStream(Stream body) : Stream
{
    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    public override async ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default)
    {
        try
        {
            return await body.ReadAsync(buffer, cancellationToken);
        }
        catch (IOException exception) when (exception is not BadHttpRequestException)
        {
            throw new BadHttpRequestException("The multipart body broke off before its end.", StatusCodes.Status400BadRequest, exception);
        }
    }

    public override Task<int> ReadAsync(byte[] buffer, int offset, int count, CancellationToken cancellationToken) => ReadAsync(buffer.AsMemory(offset, count), cancellationToken).AsTask();

    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException("What arrives is read asynchronously.");

    public override void Flush()
    {
    }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}
