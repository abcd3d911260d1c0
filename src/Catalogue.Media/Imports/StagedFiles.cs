using Catalogue.Media.Photos;

namespace Catalogue.Media.Imports;

/// <summary>
/// Files that wait to be imported, in a folder of their own within the media store, so that any node that shares the store finds them. Each has a name that we
/// gave it, appears whole or not at all, and is private to the import that it belongs to.
/// </summary>
/// <param name="store">The media store.</param>
public sealed class StagedFiles(MediaStore store)
{
    private const int BufferBytes = 128 * 1024;

    /// <summary>How long a file is kept at most.</summary>
    public static readonly TimeSpan KeptFor = TimeSpan.FromDays(1);

    /// <summary>Takes a file in.</summary>
    /// <param name="name">The name it gets.</param>
    /// <param name="upload">Read from where it stands to its end, or to one byte past the cap; not disposed.</param>
    /// <param name="maxBytes">Longest file in bytes. It is counted here: a stated length is only a claim.</param>
    /// <param name="cancellationToken">Ends it; nothing is kept.</param>
    /// <returns>How many bytes it has, or null when there are more than the cap; then nothing is kept.</returns>
    /// <exception cref="IOException">The upload broke off or the disk is full; nothing is kept.</exception>
    public async Task<long?> ReceiveAsync(Guid name, Stream upload, long maxBytes, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(upload);
        ArgumentOutOfRangeException.ThrowIfLessThan(maxBytes, 1);
        var path = store.NewIncomingPath();
        try
        {
            long bytes = 0;
            await using (var file = MediaStore.CreateIncoming(path))
            {
                var buffer = new byte[BufferBytes];
                int count;
                while ((count = await upload.ReadAsync(buffer, cancellationToken)) > 0)
                {
                    bytes += count;
                    if (bytes > maxBytes)
                        return null;
                    await file.WriteAsync(buffer.AsMemory(0, count), cancellationToken);
                }

                file.Flush(flushToDisk: true);
            }

            Directory.CreateDirectory(store.StagedFolder);
            File.Move(path, PathOf(name));
            FolderFlush.Flush(store.StagedFolder);
            return bytes;
        }
        finally
        {
            File.Delete(path);
        }
    }

    /// <summary>Opens a file for reading; null when there is none. It can be read to its end also when it is removed meanwhile.</summary>
    public Stream? Open(Guid name)
    {
        try
        {
            return new FileStream(PathOf(name), new FileStreamOptions { Share = FileShare.Read | FileShare.Delete, Options = FileOptions.Asynchronous });
        }
        catch (Exception absent) when (absent is FileNotFoundException or DirectoryNotFoundException)
        {
            return null;
        }
    }

    /// <summary>Removes a file; nothing happens when there is none.</summary>
    public void Remove(Guid name)
    {
        if (Directory.Exists(store.StagedFolder))
            File.Delete(PathOf(name));
    }

    /// <summary>Removes files that came in before a moment.</summary>
    /// <returns>How many were removed.</returns>
    public int RemoveOlder(DateTimeOffset receivedBefore)
    {
        if (!Directory.Exists(store.StagedFolder))
            return 0;
        var removed = 0;
        foreach (var file in new DirectoryInfo(store.StagedFolder).EnumerateFiles().Where(file => file.LastWriteTimeUtc < receivedBefore.UtcDateTime))
        {
            file.Delete();
            removed++;
        }

        return removed;
    }

    private string PathOf(Guid name) => Path.Combine(store.StagedFolder, name.ToString("n"));
}
