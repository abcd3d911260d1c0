using System.Globalization;
using System.IO.Compression;
using Catalogue.Domain.Photos;

namespace Catalogue.Media.Photos;

/// <summary>
/// A zip file (APPNOTE.TXT 6.3). Nothing is unpacked to a name that stands in it, and the bytes that come out are counted.
/// </summary>
public sealed class ZipBundle : FileBundle
{
    /// <summary>The most bytes that all entries together unpack to: 4 GiB. House rule.</summary>
    public const long MaxUnpackedBytes = 4L * 1024 * 1024 * 1024;

    /// <summary>The most that an entry of some size may be packed by. Pictures are packed already and hardly shrink; only a trap does so far. House rule.</summary>
    public const int MaxRatio = 200;

    private const int RatioCountsFromBytes = 1024 * 1024;
    private const int SymbolicLink = 0xA000;
    private const int FileTypeBits = 0xF000;

    private readonly ZipArchive _zip;
    private readonly IReadOnlyList<ZipArchiveEntry> _packed;
    private readonly long _maxUnpackedBytes;
    private long _unpacked;

    private ZipBundle(ZipArchive zip, IReadOnlyList<ZipArchiveEntry> packed, IReadOnlyList<Entry> entries, EntryNames names, long maxUnpackedBytes)
    {
        (_zip, _packed, Entries, _maxUnpackedBytes) = (zip, packed, entries, maxUnpackedBytes);
        GuessedEncoding = names.IsGuess ? names.Encoding : null;
    }

    /// <inheritdoc />
    public override IReadOnlyList<Entry> Entries { get; }

    /// <inheritdoc />
    public override string? GuessedEncoding { get; }

    /// <summary>Opens a file.</summary>
    /// <param name="file">Can seek; not disposed.</param>
    /// <param name="maxUnpackedBytes">The most bytes that come out of it; <see cref="MaxUnpackedBytes"/> unless set otherwise.</param>
    public static Opening Open(Stream file, long maxUnpackedBytes = MaxUnpackedBytes)
    {
        ArgumentNullException.ThrowIfNull(file);
        if (ZipDirectory.Check(file, MaxEntries) is { } reason)
            return new Opening.Refused(reason);
        ZipArchive? zip = null;
        try
        {
            file.Position = 0;
            zip = new ZipArchive(file, ZipArchiveMode.Read, leaveOpen: true, RawNames.Instance);
            var packed = zip.Entries.Where(entry => !IsFolder(entry)).ToList();
            var raw = packed.Select(entry => RawNames.BytesOf(entry.FullName)).ToList();
            var names = EntryNames.Decode([.. raw.OfType<byte[]>()]);
            var next = 0;
            var entries = new List<Entry>(packed.Count);
            var seen = new HashSet<string>(StringComparer.Ordinal);
            foreach (var (entry, bytes) in packed.Zip(raw))
                entries.Add(Judge(entries.Count, Keep(bytes is null ? entry.FullName : names.Names[next++]), entry, seen));
            return new Opening.Opened(new ZipBundle(zip, packed, entries, names, maxUnpackedBytes));
        }
        catch (Exception damaged) when (damaged is InvalidDataException or IOException or ArgumentException or NotSupportedException or OverflowException)
        {
            zip?.Dispose();
            return new Opening.Refused("The zip file is damaged or cut off. Pack the files again and send the whole of it.");
        }
    }

    /// <inheritdoc />
    protected override Stream? OpenContent(Entry entry, out string? reason)
    {
        ArgumentNullException.ThrowIfNull(entry);
        reason = null;
        if (_unpacked >= _maxUnpackedBytes)
        {
            reason = string.Create(CultureInfo.InvariantCulture, $"All entries together unpack to more than {_maxUnpackedBytes / (1024 * 1024)} MiB; send them in several files.");
            return null;
        }

        try
        {
            return new CountedStream(_packed[entry.Index].Open(), Count);
        }
        catch (Exception damaged) when (damaged is InvalidDataException or IOException or NotSupportedException)
        {
            reason = "It is packed in a way that is not read, or damaged. Pack the files again by the usual method (deflate).";
            return null;
        }
    }

    /// <inheritdoc />
    protected override void Dispose(bool disposing)
    {
        if (disposing)
            _zip.Dispose();
        base.Dispose(disposing);
    }

    // An entry that lies about its length ends here.
    private void Count(int bytes)
    {
        _unpacked += bytes;
        if (_unpacked > _maxUnpackedBytes + ImageLimits.DefaultMaxUploadBytes)
            throw new InvalidDataException("More bytes come out of the zip file than it may hold.");
    }

    private static bool IsFolder(ZipArchiveEntry entry) => entry.FullName.EndsWith('/') || (entry.FullName.EndsWith('\\') && entry.Length == 0);

    private static Entry Judge(int index, string name, ZipArchiveEntry entry, HashSet<string> seen)
    {
        var isLink = ((entry.ExternalAttributes >> 16) & FileTypeBits) == SymbolicLink;
        var refusal = isLink ? "It is a link to another file; links are not followed."
            : Judge(name, entry.Length, seen)
            ?? (entry.IsEncrypted ? "It is encrypted. Pack the files again without a password."
            : entry.Length > RatioCountsFromBytes && entry.Length / Math.Max(1, entry.CompressedLength) > MaxRatio ? "It is packed far tighter than any picture can be; it is not unpacked."
            : null);
        return new Entry(index, name, entry.Length, refusal, PictureFiles.SystemFile(name) is not null);
    }

    /// <summary>Passes bytes on and says how many.</summary>
    private sealed class CountedStream(Stream inner, Action<int> count) : Stream
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

        public override int Read(Span<byte> buffer) => Counted(inner.Read(buffer));

        public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

        public override async ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default) => Counted(await inner.ReadAsync(buffer, cancellationToken));

        public override Task<int> ReadAsync(byte[] buffer, int offset, int count, CancellationToken cancellationToken) => ReadAsync(buffer.AsMemory(offset, count), cancellationToken).AsTask();

        public override void Flush()
        {
        }

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();

        protected override void Dispose(bool disposing)
        {
            if (disposing)
                inner.Dispose();
            base.Dispose(disposing);
        }

        private int Counted(int bytes)
        {
            count(bytes);
            return bytes;
        }
    }
}
