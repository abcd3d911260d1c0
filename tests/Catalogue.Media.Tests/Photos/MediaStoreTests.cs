using Catalogue.Media.Photos;

namespace Catalogue.Media.Tests.Photos;

public sealed class MediaStoreTests : IDisposable
{
    private static readonly byte[] Content = "not a picture, which the store does not mind"u8.ToArray();

    private readonly TemporaryFolder _folder = new();
    private readonly MediaStore _store;

    public MediaStoreTests() => _store = new MediaStore(Path.Combine(_folder.Path, "media"));

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task WriteAsync_Original_CanBeReadBack()
    {
        var key = await KeyOfAsync(Content);

        await _store.WriteAsync(key, new MemoryStream(Content), default);

        Assert.True(_store.Contains(key));
        await using var read = await _store.OpenAsync(key, default);
        Assert.NotNull(read);
        Assert.Equal(Content.Length, read.Length);
        using var copy = new MemoryStream();
        await read.Stream.CopyToAsync(copy);
        Assert.Equal(Content, copy.ToArray());
        Assert.Equal([Path.Combine(_folder.Path, "media", key.RelativePath)], _folder.Files());
    }

    [Fact]
    public async Task OpenAsync_Missing_GivesNull() => Assert.Null(await _store.OpenAsync(await KeyOfAsync(Content), default));

    [Fact]
    public async Task WriteAsync_OtherBytesThanTheKeySays_AreRefused()
    {
        var key = await KeyOfAsync(Content);

        await Assert.ThrowsAsync<InvalidDataException>(() => _store.WriteAsync(key, new MemoryStream([1, 2, 3]), default));

        Assert.Empty(_folder.Files());
    }

    [Fact]
    public async Task WriteAsync_SourceThatBreaks_LeavesTheOldFile()
    {
        var key = MediaKey.Rendition((await KeyOfAsync(Content)).Hash, 480);
        await _store.WriteAsync(key, new MemoryStream(Content), default);

        await Assert.ThrowsAsync<IOException>(() => _store.WriteAsync(key, new BreakingStream([9, 9, 9], () => throw new IOException("cut")), default));

        Assert.Equal(Content, await File.ReadAllBytesAsync(Assert.Single(_folder.Files())));
    }

    [Fact]
    public async Task VerifyAsync_TellsSoundAlteredAndMissingApart()
    {
        var key = await KeyOfAsync(Content);
        Assert.Equal(MediaSoundness.Missing, await _store.VerifyAsync(key, default));

        await _store.WriteAsync(key, new MemoryStream(Content), default);
        Assert.Equal(MediaSoundness.Sound, await _store.VerifyAsync(key, default));

        await File.AppendAllTextAsync(Assert.Single(_folder.Files()), "x");
        Assert.Equal(MediaSoundness.Altered, await _store.VerifyAsync(key, default));

        await _store.WriteAsync(key, new MemoryStream(Content), default);
        Assert.Equal(MediaSoundness.Sound, await _store.VerifyAsync(key, default));
    }

    [Fact]
    public async Task VerifyAsync_Rendition_Throws()
    {
        var hash = (await KeyOfAsync(Content)).Hash;

        await Assert.ThrowsAsync<ArgumentException>(() => _store.VerifyAsync(MediaKey.Rendition(hash, 480), default));
    }

    [Fact]
    public async Task List_GivesItsOwnFilesOnly()
    {
        var key = await KeyOfAsync(Content);
        var rendition = MediaKey.Rendition(key.Hash, 480);
        await _store.WriteAsync(key, new MemoryStream(Content), default);
        await _store.WriteAsync(rendition, new MemoryStream(Content), default);
        _folder.File(Path.Combine("media", "readme.txt"), Content);
        _folder.File(Path.Combine("media", key.FileName), Content);

        Assert.Equal([key.FileName, rendition.FileName], _store.List().Select(listed => listed.FileName).OrderDescending(StringComparer.Ordinal));
    }

    [Fact]
    public async Task IsReadyAsync_WritableFolder_LeavesNothingBehind()
    {
        Assert.True(await _store.IsReadyAsync(default));
        Assert.Empty(_folder.Files());
    }

    [Fact]
    public async Task IsReadyAsync_FolderGone_IsFalse()
    {
        Directory.Delete(Path.Combine(_folder.Path, "media"), recursive: true);

        Assert.False(await _store.IsReadyAsync(default));
    }

    [Fact]
    public void RemoveAbandoned_TakesOldLeftoversOnly()
    {
        var now = new DateTimeOffset(2026, 3, 1, 12, 0, 0, TimeSpan.Zero);
        var old = _folder.File(Path.Combine("media", ".incoming", "old"), [1]);
        var young = _folder.File(Path.Combine("media", ".incoming", "young"), [1]);
        var oldFolder = _folder.Folder(Path.Combine("media", ".incoming", "renditions"));
        File.SetLastWriteTimeUtc(old, now.UtcDateTime.AddDays(-2));
        File.SetLastWriteTimeUtc(young, now.UtcDateTime);
        Directory.SetLastWriteTimeUtc(oldFolder, now.UtcDateTime.AddDays(-2));

        Assert.Equal(2, _store.RemoveAbandoned(now.AddDays(-1)));

        Assert.Equal([young], _folder.Files());
        Assert.False(Directory.Exists(oldFolder));
    }

    private static async Task<MediaKey> KeyOfAsync(byte[] content) =>
        MediaKey.Original(await Sha256.OfAsync(new MemoryStream(content), default), ImageKind.Jpeg);
}
