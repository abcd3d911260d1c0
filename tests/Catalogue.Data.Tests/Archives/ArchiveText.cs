using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using Catalogue.Data.Archives;

namespace Catalogue.Data.Tests.Archives;

/// <summary>An archive taken to pieces and put together again, as somebody with a text editor would.</summary>
internal sealed class ArchiveText
{
    /// <summary>The entries but the manifest, by name, in their order.</summary>
    public Dictionary<string, byte[]> Entries { get; } = [];

    /// <summary>The manifest.</summary>
    public JsonObject Manifest { get; private set; } = [];

    public static ArchiveText Open(Stream archive)
    {
        archive.Position = 0;
        var made = new ArchiveText();
        using var zip = new ZipArchive(archive, ZipArchiveMode.Read, leaveOpen: true);
        foreach (var entry in zip.Entries)
        {
            using var content = entry.Open();
            using var copy = new MemoryStream();
            content.CopyTo(copy);
            if (entry.FullName == ArchiveForm.ManifestEntry)
                made.Manifest = JsonNode.Parse(copy.ToArray())!.AsObject();
            else
                made.Entries.Add(entry.FullName, copy.ToArray());
        }

        return made;
    }

    /// <summary>The lines of an entry.</summary>
    public string[] Lines(string entry) => Encoding.UTF8.GetString(Entries[entry]).Split('\n', StringSplitOptions.RemoveEmptyEntries);

    /// <summary>Changes one line of an entry.</summary>
    public ArchiveText WithLine(string entry, int number, Func<string, string> change)
    {
        var lines = Lines(entry);
        lines[number - 1] = change(lines[number - 1]);
        Entries[entry] = Encoding.UTF8.GetBytes(string.Join('\n', lines) + "\n");
        return this;
    }

    /// <summary>The number of the first line of a kind.</summary>
    public int LineOf(string entry, string kind) => Array.FindIndex(Lines(entry), line => line.StartsWith($"{{\"record\":\"{kind}\"", StringComparison.Ordinal)) + 1;

    /// <summary>A zip of it whose manifest goes with the entries.</summary>
    public MemoryStream Pack(Action<JsonObject>? manifest = null, Action<ZipArchive>? more = null, CompressionLevel level = CompressionLevel.Optimal)
    {
        var told = Manifest.DeepClone().AsObject();
        told["entries"] = new JsonArray([.. Entries.Select(entry => new JsonObject { ["name"] = entry.Key, ["bytes"] = entry.Value.LongLength, ["sha256"] = Convert.ToHexStringLower(SHA256.HashData(entry.Value)) })]);
        manifest?.Invoke(told);
        var stream = new MemoryStream();
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (name, content) in Entries.Append(new(ArchiveForm.ManifestEntry, Encoding.UTF8.GetBytes(told.ToJsonString()))))
            {
                using var entry = zip.CreateEntry(name, level).Open();
                entry.Write(content);
            }

            more?.Invoke(zip);
        }

        stream.Position = 0;
        return stream;
    }
}
