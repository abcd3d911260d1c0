using System.Buffers;
using System.Globalization;
using System.Security.Cryptography;

namespace Catalogue.Media.Photos;

/// <summary>
/// Takes one upload in: stream to a private file while counting and digesting, look at its header, have it decoded once from end
/// to end in the worker process, and only then let it into the store. However it ends, nothing is left half-written.
/// </summary>
public sealed class PhotoIntake
{
    private const int BufferBytes = 128 * 1024;

    private readonly MediaStore _store;
    private readonly ImageWorkerProcess _worker;
    private readonly long _maxBytes;

    /// <summary>Joins the parts.</summary>
    /// <param name="store">Where accepted originals go.</param>
    /// <param name="worker">Decodes each upload once.</param>
    /// <param name="maxBytes">Longest upload in bytes. It is counted here: a stated length is only a claim.</param>
    public PhotoIntake(MediaStore store, ImageWorkerProcess worker, long maxBytes = ImageLimits.DefaultMaxUploadBytes)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(maxBytes, 1);
        _store = store;
        _worker = worker;
        _maxBytes = maxBytes;
    }

    /// <summary>Takes an upload in.</summary>
    /// <param name="upload">Read from where it stands to its end, or to one byte past the cap; not disposed.</param>
    /// <param name="cancellationToken">Ends the upload; nothing is stored.</param>
    /// <exception cref="IOException">The upload broke off or the disk is full; nothing is stored.</exception>
    /// <exception cref="OperationCanceledException">Cancelled; nothing is stored.</exception>
    public async Task<PhotoReceipt> ReceiveAsync(Stream upload, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(upload);
        var path = _store.NewIncomingPath();
        try
        {
            if (await CopyAsync(upload, path, cancellationToken) is not { } copied)
            {
                return new PhotoReceipt.Refused(ImageRefusal.TooManyBytes, string.Create(
                    CultureInfo.InvariantCulture,
                    $"The file is longer than {_maxBytes / 1024.0 / 1024:0.##} MiB. Save it with a stronger compression or fewer pixels."));
            }

            return await ImageHeader.ReadFileAsync(path, cancellationToken) switch
            {
                ImageHeader.Recognised header => await DecodeAndStoreAsync(path, copied, header, cancellationToken),
                ImageHeader.Refused refused => new PhotoReceipt.Refused(refused.Reason, refused.Text),
                _ => throw new InvalidOperationException("The header is of no known kind."),
            };
        }
        finally
        {
            File.Delete(path);
        }
    }

    private async Task<PhotoReceipt> DecodeAndStoreAsync(
        string path, (Sha256 Hash, long Bytes) copied, ImageHeader.Recognised header, CancellationToken cancellationToken)
    {
        switch (await _worker.VerifyAsync(path, cancellationToken))
        {
            case ImageWork.Done:
                var key = MediaKey.Original(copied.Hash, header.Kind);
                var wasStored = _store.Contains(key);
                _store.Adopt(key, path);
                return new PhotoReceipt.Accepted(
                    copied.Hash, header.Kind, copied.Bytes, header.Width, header.Height, header.Orientation, wasStored);

            case ImageWork.Refused refused:
                return new PhotoReceipt.Refused(refused.Reason, refused.Text);

            case ImageWork.TimedOut timedOut:
                return new PhotoReceipt.Refused(ImageRefusal.TooCostly, string.Create(
                    CultureInfo.InvariantCulture,
                    $"The picture was not decoded within {timedOut.Limit.TotalSeconds:0.#} seconds. Save it again as an ordinary JPEG."));

            case ImageWork.Failed failed:
                return new PhotoReceipt.NotChecked(failed.Text);

            default:
                throw new InvalidOperationException("The worker's answer is of no known kind.");
        }
    }

    /// <summary>Null when the upload goes past the cap.</summary>
    private async Task<(Sha256 Hash, long Bytes)?> CopyAsync(Stream upload, string path, CancellationToken cancellationToken)
    {
        using var digest = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        var buffer = ArrayPool<byte>.Shared.Rent(BufferBytes);
        try
        {
            await using var file = MediaStore.CreateIncoming(path);
            long bytes = 0;
            int count;
            while ((count = await upload.ReadAsync(buffer, cancellationToken)) > 0)
            {
                bytes += count;
                if (bytes > _maxBytes)
                {
                    return null;
                }

                digest.AppendData(buffer, 0, count);
                await file.WriteAsync(buffer.AsMemory(0, count), cancellationToken);
            }

            file.Flush(flushToDisk: true);
            return (Sha256.FromBytes(digest.GetHashAndReset()), bytes);
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(buffer);
        }
    }
}
