using System.Buffers;
using System.IO.Compression;
using System.Security.Cryptography;

namespace Catalogue.Data.Archives;

/// <summary>Writes one entry of an archive, and counts and digests it meanwhile.</summary>
internal sealed class ArchiveEntryWriter : IAsyncDisposable
{
    private const int FlushAt = 64 * 1024;

    private readonly string _name;
    private readonly Stream _target;
    private readonly List<ArchiveManifest.Entry> _entries;
    private readonly IncrementalHash _digest = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
    private readonly ArrayBufferWriter<byte> _waiting = new(2 * FlushAt);
    private long _bytes;

    private ArchiveEntryWriter(string name, Stream target, List<ArchiveManifest.Entry> entries)
    {
        _name = name;
        _target = target;
        _entries = entries;
    }

    /// <summary>Begins an entry; when it is disposed it stands in the list.</summary>
    public static async Task<ArchiveEntryWriter> BeginAsync(
        ZipArchive zip, string name, CompressionLevel level, DateTimeOffset madeAt, List<ArchiveManifest.Entry> entries, CancellationToken cancellationToken)
    {
        var entry = zip.CreateEntry(name, level);
        entry.LastWriteTime = madeAt;
        return new ArchiveEntryWriter(name, await entry.OpenAsync(cancellationToken), entries);
    }

    /// <summary>Writes a record as a line.</summary>
    public async Task WriteLineAsync(ArchiveKind kind, object record, ArchiveJson.Setting setting, CancellationToken cancellationToken)
    {
        ArchiveJson.WriteLine(_waiting, kind, record, setting);
        if (_waiting.WrittenCount >= FlushAt)
            await FlushAsync(cancellationToken);
    }

    /// <summary>Copies a file.</summary>
    public async Task CopyAsync(Stream content, CancellationToken cancellationToken)
    {
        int count;
        while ((count = await content.ReadAsync(_waiting.GetMemory(FlushAt), cancellationToken)) > 0)
        {
            _waiting.Advance(count);
            await FlushAsync(cancellationToken);
        }
    }

    public async ValueTask DisposeAsync()
    {
        await FlushAsync(CancellationToken.None);
        await _target.DisposeAsync();
        _entries.Add(new ArchiveManifest.Entry(_name, _bytes, Convert.ToHexStringLower(_digest.GetHashAndReset())));
        _digest.Dispose();
    }

    private async Task FlushAsync(CancellationToken cancellationToken)
    {
        _digest.AppendData(_waiting.WrittenSpan);
        _bytes += _waiting.WrittenCount;
        await _target.WriteAsync(_waiting.WrittenMemory, cancellationToken);
        _waiting.ResetWrittenCount();
    }
}
