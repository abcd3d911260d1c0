using System.IO.Compression;
using System.Text;

namespace Catalogue.Web.Tests;

/// <summary>Zip files put together in memory.</summary>
internal static class ZipFiles
{
    /// <summary>A zip of these entries; names in UTF-8 unless another encoding is given.</summary>
    public static byte[] Of(Encoding? names, params (string Name, byte[] Content)[] entries)
    {
        using var stream = new MemoryStream();
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true, names))
        {
            foreach (var (name, content) in entries)
            {
                using var entry = zip.CreateEntry(name, CompressionLevel.NoCompression).Open();
                entry.Write(content);
            }
        }

        return stream.ToArray();
    }

    public static byte[] Of(params (string Name, byte[] Content)[] entries) => Of(null, entries);
}
