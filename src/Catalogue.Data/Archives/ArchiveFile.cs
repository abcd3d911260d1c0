using System.Buffers.Binary;
using System.IO.Compression;
using System.Runtime.CompilerServices;
using System.Security.Cryptography;
using System.Text.Json;

namespace Catalogue.Data.Archives;

/// <summary>
/// An archive that somebody sent. Nothing in it is believed: names come from a closed list, lengths are counted while they are unpacked, every entry is held against
/// its digest. All methods throw <see cref="ArchiveRefusedException"/> for what is wrong with the file.
/// </summary>
internal sealed class ArchiveFile : IDisposable
{
    private const int SymbolicLink = 0xA000;
    private const int KindOfFile = 0xF000;
    private const int EndBytes = 22;

    private readonly ZipArchive _zip;
    private readonly Dictionary<string, ZipArchiveEntry> _entries;
    private readonly Dictionary<string, string> _digests = new(StringComparer.Ordinal);

    private ArchiveFile(ZipArchive zip, Dictionary<string, ZipArchiveEntry> entries)
    {
        _zip = zip;
        _entries = entries;
    }

    /// <summary>A line of an entry.</summary>
    /// <param name="Entry">The entry.</param>
    /// <param name="Number">Its number, from 1.</param>
    /// <param name="Kind">Its kind.</param>
    /// <param name="Revision">The number of its revision, or null for kinds that are of none.</param>
    /// <param name="Record">The record.</param>
    /// <param name="Family">The match key that it names, or null.</param>
    public sealed record Line(string Entry, int Number, ArchiveKind Kind, int? Revision, object Record, string? Family)
    {
        /// <summary>A refusal of this line.</summary>
        public ArchiveRefusedException Refuse(string reason) => ArchiveRefusedException.AtLine(Entry, Number, reason);
    }

    /// <summary>What the archive says of itself.</summary>
    public ArchiveManifest Manifest { get; private set; } = null!;

    /// <summary>The entries of teardowns, in order of their names.</summary>
    public IEnumerable<string> TeardownEntries => _entries.Keys.Where(name => name.StartsWith("teardowns/", StringComparison.Ordinal)).Order(StringComparer.Ordinal);

    /// <summary>Opens an archive and holds its directory against the form.</summary>
    /// <param name="file">It can be read from any place; not disposed.</param>
    /// <param name="cancellationToken">Cancels it.</param>
    public static async Task<ArchiveFile> OpenAsync(Stream file, CancellationToken cancellationToken)
    {
        await RefuseDirectoryAsync(file, cancellationToken);
        file.Position = 0;
        ZipArchive? zip = null;
        try
        {
            zip = await ZipArchive.CreateAsync(file, ZipArchiveMode.Read, leaveOpen: true, entryNameEncoding: null, cancellationToken);
            var archive = new ArchiveFile(zip, Entries(zip));
            archive.Manifest = await archive.ReadManifestAsync(cancellationToken);
            return archive;
        }
        catch (InvalidDataException)
        {
            zip?.Dispose();
            throw new ArchiveRefusedException(null, "The file is no sound zip archive: its directory is damaged, or it was cut off.");
        }
        catch
        {
            zip?.Dispose();
            throw;
        }
    }

    /// <summary>Unpacks every entry once and compares it with what the manifest says.</summary>
    public async Task VerifyAsync(CancellationToken cancellationToken)
    {
        var listed = new HashSet<string>(StringComparer.Ordinal) { ArchiveForm.ManifestEntry };
        foreach (var entry in Manifest.Entries)
        {
            if (!listed.Add(entry.Name))
                throw new ArchiveRefusedException(ArchiveForm.ManifestEntry, $"It lists “{Short(entry.Name)}” twice.");
            if (!_entries.ContainsKey(entry.Name))
                throw new ArchiveRefusedException(ArchiveForm.ManifestEntry, $"It lists “{Short(entry.Name)}”, which is not in the archive.");
        }

        if (_entries.Keys.FirstOrDefault(name => !listed.Contains(name)) is { } unlisted)
            throw new ArchiveRefusedException(unlisted, "The manifest does not list it.");

        var buffer = new byte[128 * 1024];
        foreach (var entry in Manifest.Entries)
        {
            using var digest = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
            long bytes = 0;
            await using var content = await OpenEntryAsync(entry.Name, cancellationToken);
            int count;
            while ((count = await ReadAsync(entry.Name, content, buffer, cancellationToken)) > 0)
            {
                bytes += count;
                if (bytes > entry.Bytes)
                    throw new ArchiveRefusedException(entry.Name, $"It is longer than the {entry.Bytes} bytes that the manifest says.");
                digest.AppendData(buffer, 0, count);
            }

            if (bytes != entry.Bytes || Convert.ToHexStringLower(digest.GetHashAndReset()) != entry.Sha256)
                throw new ArchiveRefusedException(entry.Name, "It does not have the length and the SHA-256 that the manifest says: it was changed or damaged.");
            _digests[entry.Name] = entry.Sha256;
        }
    }

    /// <summary>The SHA-256 of an entry, or null when there is none.</summary>
    public string? Sha256Of(string name) => _digests.GetValueOrDefault(name);

    /// <summary>Opens an entry.</summary>
    public async Task<Stream> OpenEntryAsync(string name, CancellationToken cancellationToken)
    {
        try
        {
            return await _entries[name].OpenAsync(cancellationToken);
        }
        catch (Exception exception) when (IsDamage(exception))
        {
            throw new ArchiveRefusedException(name, "It cannot be unpacked: its data is damaged, or packed in a way that is not read here.");
        }
    }

    /// <summary>The lines of an entry, one after the other; blank ones are passed over. An entry that is missing has none.</summary>
    public async IAsyncEnumerable<Line> LinesAsync(string name, [EnumeratorCancellation] CancellationToken cancellationToken)
    {
        if (!_entries.ContainsKey(name))
            yield break;
        await using var content = await OpenEntryAsync(name, cancellationToken);
        var buffer = new byte[64 * 1024];
        var (start, end, number, isLast) = (0, 0, 0, false);
        while (true)
        {
            var length = buffer.AsSpan(start, end - start).IndexOf((byte)'\n');
            if (length < 0 && !isLast)
            {
                if (end - start >= ArchiveForm.MaxLineBytes)
                    throw ArchiveRefusedException.AtLine(name, number + 1, $"It is longer than {ArchiveForm.MaxLineBytes / (1024 * 1024)} MiB.");
                if (start > 0)
                    buffer.AsSpan(start, end - start).CopyTo(buffer);
                (start, end) = (0, end - start);
                if (end == buffer.Length)
                    Array.Resize(ref buffer, Math.Min(buffer.Length * 2, ArchiveForm.MaxLineBytes));
                var count = await ReadAsync(name, content, buffer.AsMemory(end), cancellationToken);
                isLast = count == 0;
                end += count;
                continue;
            }

            if (length < 0)
                length = end - start;
            var line = buffer.AsMemory(start, length).TrimEnd("\r"u8);
            start = Math.Min(start + length + 1, end);
            number++;
            if (line.Span.ContainsAnyExcept((byte)' ', (byte)'\t'))
                yield return Read(name, number, line);
            if (isLast && start >= end)
                yield break;
        }
    }

    /// <inheritdoc />
    public void Dispose() => _zip.Dispose();

    private static Line Read(string name, int number, ReadOnlyMemory<byte> line)
    {
        try
        {
            var (kind, revision, record, family) = ArchiveJson.ReadLine(line);
            if (ArchiveRecordCheck.Refuse(record) is { } reason)
                throw ArchiveRefusedException.AtLine(name, number, reason);
            return new Line(name, number, kind, revision, record, family);
        }
        catch (JsonException exception)
        {
            throw ArchiveRefusedException.AtLine(name, number, exception.Message);
        }
    }

    private async Task<ArchiveManifest> ReadManifestAsync(CancellationToken cancellationToken)
    {
        if (!_entries.TryGetValue(ArchiveForm.ManifestEntry, out var entry))
            throw new ArchiveRefusedException(null, $"It holds no {ArchiveForm.ManifestEntry}; it is no archive of teardowns.");
        if (entry.Length > ArchiveForm.MaxManifestBytes)
            throw new ArchiveRefusedException(ArchiveForm.ManifestEntry, "It is too long.");
        var bytes = new byte[entry.Length];
        await using (var content = await OpenEntryAsync(ArchiveForm.ManifestEntry, cancellationToken))
        {
            var filled = 0;
            int count;
            while (filled < bytes.Length && (count = await ReadAsync(ArchiveForm.ManifestEntry, content, bytes.AsMemory(filled), cancellationToken)) > 0)
                filled += count;
        }

        try
        {
            // The version is looked at first: a newer form may have other fields.
            using (var document = JsonDocument.Parse(bytes))
            {
                var root = document.RootElement;
                if (root.ValueKind is not JsonValueKind.Object || !root.TryGetProperty("form", out var form) || form.ValueKind is not JsonValueKind.String || form.GetString() != ArchiveForm.Name)
                    throw new ArchiveRefusedException(ArchiveForm.ManifestEntry, $"Its form is not “{ArchiveForm.Name}”.");
                if (!root.TryGetProperty("version", out var version) || version.ValueKind is not JsonValueKind.Number || !version.TryGetInt32(out var number) || number < 1)
                    throw new ArchiveRefusedException(ArchiveForm.ManifestEntry, "It names no version of the form.");
                if (number > ArchiveForm.Version)
                    throw new ArchiveRefusedException(ArchiveForm.ManifestEntry, $"The archive has version {number} of the form; this program reads up to version {ArchiveForm.Version}. Bring it in with a newer one.");
            }

            return JsonSerializer.Deserialize<ArchiveManifest>(bytes, ArchiveJson.Options) ?? throw new JsonException();
        }
        catch (Exception exception) when (exception is JsonException or InvalidOperationException)
        {
            throw new ArchiveRefusedException(ArchiveForm.ManifestEntry, "It cannot be read: a field is missing, not known or of the wrong type.");
        }
    }

    private static Dictionary<string, ZipArchiveEntry> Entries(ZipArchive zip)
    {
        var entries = new Dictionary<string, ZipArchiveEntry>(StringComparer.OrdinalIgnoreCase);
        long total = 0;
        foreach (var entry in zip.Entries)
        {
            var name = entry.FullName;
            if (ArchiveForm.IsFolderName(name) && entry.Length == 0)
                continue;
            if (!ArchiveForm.IsEntryName(name))
            {
                var leads = name.Contains("..", StringComparison.Ordinal) || name.Contains('\\', StringComparison.Ordinal) || name.Contains(':', StringComparison.Ordinal) || name.StartsWith('/');
                throw new ArchiveRefusedException(Short(name), leads ? "The name leads out of the archive." : "An archive of teardowns has no entry of that name.");
            }

            if (((entry.ExternalAttributes >> 16) & KindOfFile) == SymbolicLink)
                throw new ArchiveRefusedException(name, "It is a link, and links are not taken.");
            if (entry.IsEncrypted)
                throw new ArchiveRefusedException(name, "It is encrypted; send the archive without a password.");
            if (!entries.TryAdd(name, entry))
                throw new ArchiveRefusedException(name, "The name stands twice in the archive.");
            total += entry.Length;
            if (total > ArchiveForm.MaxUnpackedBytes)
                throw new ArchiveRefusedException(null, $"It would unpack to more than {ArchiveForm.MaxUnpackedBytes / (1024 * 1024 * 1024)} GiB.");
            if (entry.Length > ArchiveForm.SmallEntryBytes && entry.Length / Math.Max(1, entry.CompressedLength) >= ArchiveForm.MaxPackingRatio)
                throw new ArchiveRefusedException(name, $"It would unpack to more than {ArchiveForm.MaxPackingRatio} times its packed length; no records do.");
        }

        return entries;
    }

    // The directory is read as a whole by the zip library, so its size is looked at first (APPNOTE.TXT 4.3.14 to 4.3.16).
    private static async Task RefuseDirectoryAsync(Stream file, CancellationToken cancellationToken)
    {
        var tail = new byte[(int)Math.Min(file.Length, EndBytes + ushort.MaxValue)];
        file.Position = file.Length - tail.Length;
        await file.ReadExactlyAsync(tail, cancellationToken);
        var end = tail.AsSpan().LastIndexOf("PK\u0005\u0006"u8);
        if (end < 0 || tail.Length - end < EndBytes)
            throw new ArchiveRefusedException(null, "The file is no zip archive, or it was cut off: it has no directory at its end.");
        ulong count = BinaryPrimitives.ReadUInt16LittleEndian(tail.AsSpan(end + 10));
        ulong bytes = BinaryPrimitives.ReadUInt32LittleEndian(tail.AsSpan(end + 12));
        if ((count == ushort.MaxValue || bytes == uint.MaxValue) && end >= 20 && tail.AsSpan(end - 20, 4).SequenceEqual("PK\u0006\u0007"u8))
        {
            var place = BinaryPrimitives.ReadUInt64LittleEndian(tail.AsSpan(end - 12));
            var large = new byte[56];
            if (place > (ulong)Math.Max(0, file.Length - large.Length))
                throw new ArchiveRefusedException(null, "The zip's directory is damaged.");
            file.Position = (long)place;
            await file.ReadExactlyAsync(large, cancellationToken);
            count = BinaryPrimitives.ReadUInt64LittleEndian(large.AsSpan(32));
            bytes = BinaryPrimitives.ReadUInt64LittleEndian(large.AsSpan(40));
        }

        if (count > ArchiveForm.MaxEntries || bytes > (ulong)ArchiveForm.MaxDirectoryBytes)
            throw new ArchiveRefusedException(null, $"The archive has more than {ArchiveForm.MaxEntries} entries.");
    }

    private static async Task<int> ReadAsync(string name, Stream content, Memory<byte> buffer, CancellationToken cancellationToken)
    {
        try
        {
            return await content.ReadAsync(buffer, cancellationToken);
        }
        catch (Exception exception) when (IsDamage(exception))
        {
            throw new ArchiveRefusedException(name, "It cannot be unpacked: its data is damaged.");
        }
    }

    private static bool IsDamage(Exception exception) => exception is InvalidDataException or EndOfStreamException or NotSupportedException or ArgumentOutOfRangeException;

    private static string Short(string name) => new([.. name.Take(80).Select(c => char.IsControl(c) ? '?' : c)]);
}
