using Catalogue.Media.Imports;
using Catalogue.Media.Photos;
using Catalogue.Media.Tests.Photos;

namespace Catalogue.Media.Tests.Imports;

public sealed class StagedFilesTests : IDisposable
{
    private static readonly byte[] Content = [.. Enumerable.Range(0, 300_000).Select(i => (byte)i)];

    private readonly TemporaryFolder _folder = new();
    private readonly MediaStore _store;
    private readonly StagedFiles _files;

    public StagedFilesTests()
    {
        _store = new MediaStore(Path.Combine(_folder.Path, "media"));
        _files = new StagedFiles(_store);
    }

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task ReceiveAsync_AFile_IsFoundByAnotherNodeAndNoPartOfTheStore()
    {
        var name = Guid.CreateVersion7();

        Assert.Equal(Content.Length, await _files.ReceiveAsync(name, new MemoryStream(Content), Content.Length, default));

        await using var read = new StagedFiles(new MediaStore(Path.Combine(_folder.Path, "media"))).Open(name);
        Assert.NotNull(read);
        using var copy = new MemoryStream();
        await read.CopyToAsync(copy);
        Assert.Equal(Content, copy.ToArray());
        Assert.Empty(_store.List());
    }

    [Fact]
    public async Task ReceiveAsync_OneByteTooMany_IsRefusedAndNothingIsKept()
    {
        var name = Guid.CreateVersion7();

        Assert.Null(await _files.ReceiveAsync(name, new MemoryStream(Content), Content.Length - 1, default));

        Assert.Null(_files.Open(name));
        Assert.Empty(_folder.Files());
    }

    [Fact]
    public async Task ReceiveAsync_UploadThatBreaksOff_LeavesNothing()
    {
        await Assert.ThrowsAsync<IOException>(() => _files.ReceiveAsync(Guid.CreateVersion7(), new BreakingStream([1, 2, 3], () => throw new IOException("cut")), 100, default));

        Assert.Empty(_folder.Files());
    }

    [Fact]
    public async Task Remove_WhileItIsRead_LetsTheReaderFinish()
    {
        var name = Guid.CreateVersion7();
        await _files.ReceiveAsync(name, new MemoryStream(Content), Content.Length, default);
        await using var read = _files.Open(name)!;

        _files.Remove(name);
        _files.Remove(name);

        Assert.Null(_files.Open(name));
        using var copy = new MemoryStream();
        await read.CopyToAsync(copy);
        Assert.Equal(Content.Length, copy.Length);
    }

    [Fact]
    public async Task RemoveOlder_TakesOnlyWhatIsOlder()
    {
        var old = Guid.CreateVersion7();
        var young = Guid.CreateVersion7();
        Assert.Equal(0, _files.RemoveOlder(DateTimeOffset.MaxValue));
        await _files.ReceiveAsync(old, new MemoryStream([1]), 1, default);
        await _files.ReceiveAsync(young, new MemoryStream([2]), 1, default);
        var now = TimeProvider.System.GetUtcNow();
        File.SetLastWriteTimeUtc(Assert.Single(_folder.Files(), path => path.EndsWith(old.ToString("n"), StringComparison.Ordinal)), (now - StagedFiles.KeptFor).UtcDateTime.AddMinutes(-1));

        Assert.Equal(1, _files.RemoveOlder(now - StagedFiles.KeptFor));

        Assert.Null(_files.Open(old));
        await using var kept = _files.Open(young);
        Assert.NotNull(kept);
    }
}
