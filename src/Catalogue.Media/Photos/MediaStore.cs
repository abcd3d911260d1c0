namespace Catalogue.Media.Photos;

/// <summary>
/// The folder that keeps photos: originals and renditions by content, as <c>ab/cd/digest[-variant].ext</c>. A file appears whole
/// or not at all: it is written beside, flushed to the disk and renamed. Files never change, so any number of readers and nodes may
/// share the folder. Nothing that a client names reaches a path: keys are made of a digest, a checked variant and a known format.
/// </summary>
public sealed class MediaStore
{
    private const string IncomingName = ".incoming";

    private readonly string _root;
    private readonly string _incoming;

    /// <summary>Opens the folder and creates it if need be.</summary>
    /// <param name="root">The folder; a relative path starts at the working folder.</param>
    /// <exception cref="IOException">The folder cannot be created.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder cannot be created.</exception>
    public MediaStore(string root)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(root);
        _root = Path.TrimEndingDirectorySeparator(Path.GetFullPath(root));
        _incoming = Path.Combine(_root, IncomingName);
        Directory.CreateDirectory(_incoming);
    }

    /// <summary>Where files wait to be imported; on the store's own volume, and no part of the store.</summary>
    internal string StagedFolder => Path.Combine(_root, ".imports");

    /// <summary>True when the store has this file.</summary>
    public bool Contains(MediaKey key) => File.Exists(PathOf(key));

    /// <summary>Opens a file for reading; null when there is none.</summary>
    public Task<MediaContent?> OpenAsync(MediaKey key, CancellationToken cancellationToken)
    {
        cancellationToken.ThrowIfCancellationRequested();
        try
        {
            var stream = new FileStream(PathOf(key), new FileStreamOptions { Options = FileOptions.Asynchronous | FileOptions.SequentialScan });
            return Task.FromResult<MediaContent?>(new MediaContent(stream, stream.Length));
        }
        catch (Exception absent) when (absent is FileNotFoundException or DirectoryNotFoundException)
        {
            return Task.FromResult<MediaContent?>(null);
        }
    }

    /// <summary>
    /// Writes a file, or replaces one of the same name. On any failure, cancellation included, the store is as it was before.
    /// </summary>
    /// <exception cref="InvalidDataException">The key names an original and the bytes have another digest.</exception>
    public async Task WriteAsync(MediaKey key, Stream content, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(key);
        ArgumentNullException.ThrowIfNull(content);
        var path = NewIncomingPath();
        try
        {
            await using (var file = CreateIncoming(path))
            {
                await content.CopyToAsync(file, cancellationToken);
                if (key.Variant is null)
                {
                    file.Position = 0;
                    if (await Sha256.OfAsync(file, cancellationToken) != key.Hash)
                    {
                        throw new InvalidDataException($"The bytes are not those of {key}.");
                    }
                }

                file.Flush(flushToDisk: true);
            }

            Adopt(key, path);
        }
        finally
        {
            File.Delete(path);
        }
    }

    /// <summary>Digests one stored original and compares it with its name.</summary>
    /// <exception cref="ArgumentException">The key names a rendition, whose name says nothing of its own bytes.</exception>
    public async Task<MediaSoundness> VerifyAsync(MediaKey key, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(key);
        if (key.Variant is not null)
        {
            throw new ArgumentException("Only originals are named by their own digest.", nameof(key));
        }

        await using var content = await OpenAsync(key, cancellationToken);
        return content is null ? MediaSoundness.Missing
            : await Sha256.OfAsync(content.Stream, cancellationToken) == key.Hash ? MediaSoundness.Sound
            : MediaSoundness.Altered;
    }

    /// <summary>All files of the store, in no order; what does not look like one of its files is passed over.</summary>
    public IEnumerable<MediaKey> List()
    {
        foreach (var path in Directory.EnumerateFiles(_root, "*", SearchOption.AllDirectories))
        {
            if (MediaKey.TryParse(Path.GetFileName(path), out var key) && PathOf(key) == path)
            {
                yield return key;
            }
        }
    }

    /// <summary>True when a file can be written, flushed and removed here: the readiness check.</summary>
    public async Task<bool> IsReadyAsync(CancellationToken cancellationToken)
    {
        var path = NewIncomingPath();
        try
        {
            await using (var file = CreateIncoming(path))
            {
                await file.WriteAsync("ready"u8.ToArray(), cancellationToken);
                file.Flush(flushToDisk: true);
            }

            File.Delete(path);
            return true;
        }
        catch (Exception refused) when (refused is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    /// <summary>Removes what a crash left half received. Call it at start with a time no running upload can be older than.</summary>
    /// <returns>How many were removed.</returns>
    public int RemoveAbandoned(DateTimeOffset lastWrittenBefore)
    {
        var removed = 0;
        foreach (var entry in new DirectoryInfo(_incoming).EnumerateFileSystemInfos())
        {
            if (entry.LastWriteTimeUtc < lastWrittenBefore.UtcDateTime)
            {
                if (entry is DirectoryInfo folder)
                {
                    folder.Delete(recursive: true);
                }
                else
                {
                    entry.Delete();
                }

                removed++;
            }
        }

        return removed;
    }

    /// <summary>A new path on the store's own volume, for what is not yet part of the store.</summary>
    internal string NewIncomingPath() => Path.Combine(_incoming, Guid.CreateVersion7().ToString("n"));

    internal static FileStream CreateIncoming(string path) => new(path, new FileStreamOptions
    {
        Mode = FileMode.CreateNew,
        Access = FileAccess.ReadWrite,
        Options = FileOptions.Asynchronous,
        BufferSize = 128 * 1024,
    });

    /// <summary>
    /// Moves a finished, flushed file from <see cref="NewIncomingPath"/> to its name. A file already there is replaced: its bytes
    /// should be the same, and if a disk has damaged them this mends it.
    /// </summary>
    internal void Adopt(MediaKey key, string incomingPath)
    {
        var path = PathOf(key);
        var folder = Path.GetDirectoryName(path)!;
        var isNewFolder = !Directory.Exists(folder);
        Directory.CreateDirectory(folder);
        File.Move(incomingPath, path, overwrite: true);
        FolderFlush.Flush(folder);
        if (isNewFolder)
        {
            FolderFlush.Flush(Path.GetDirectoryName(folder)!);
            FolderFlush.Flush(_root);
        }
    }

    /// <summary>The full path of a file, present or not.</summary>
    internal string PathOf(MediaKey key)
    {
        ArgumentNullException.ThrowIfNull(key);
        var path = Path.GetFullPath(key.RelativePath, _root);
        return path.StartsWith(_root + Path.DirectorySeparatorChar, StringComparison.Ordinal)
            ? path
            : throw new ArgumentException("The key leads out of the store.", nameof(key));
    }
}
