using System.Collections.Concurrent;
using System.Security.Cryptography;
using Catalogue.Data.Archives;

namespace Catalogue.Data.Tests.Archives;

/// <summary>A store of files that says of each what it was told; no picture is decoded.</summary>
internal sealed class HandPhotos
{
    private readonly ConcurrentDictionary<string, byte[]> _files = new();

    /// <summary>The store as archives see it.</summary>
    public ArchivePhotos Photos => new(
        (name, _) => Task.FromResult<Stream?>(_files.TryGetValue(name, out var bytes) ? new MemoryStream(bytes) : null),
        async (content, cancel) =>
        {
            using var copy = new MemoryStream();
            await content.CopyToAsync(copy, cancel);
            var bytes = copy.ToArray();
            if (bytes is [0xBA, 0xD0, ..])
                return new ArchivePhotos.Taken("It is no picture.", "", "", 0, 0);
            Taken++;
            return new ArchivePhotos.Taken(null, Put(bytes), "png", Width, Height);
        });

    /// <summary>Width of every picture.</summary>
    public static int Width => 640;

    /// <summary>Height of every picture.</summary>
    public static int Height => 480;

    /// <summary>How many were taken in.</summary>
    public int Taken { get; private set; }

    /// <summary>Puts a file into the store.</summary>
    /// <returns>Its SHA-256.</returns>
    public string Put(byte[] bytes)
    {
        var sha = Convert.ToHexStringLower(SHA256.HashData(bytes));
        _files[$"{sha}.png"] = bytes;
        return sha;
    }
}
