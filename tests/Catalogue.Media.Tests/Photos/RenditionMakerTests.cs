using Catalogue.Media.Photos;

namespace Catalogue.Media.Tests.Photos;

public sealed class RenditionMakerTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly ImageWorkerProcess _worker;
    private readonly MediaStore _store;

    public RenditionMakerTests()
    {
        _store = new MediaStore(Path.Combine(_folder.Path, "media"));
        _worker = new ImageWorkerProcess(new ImageWorkerOptions { ScratchFolder = _folder.Folder("scratch") }, TimeProvider.System);
    }

    public void Dispose()
    {
        _worker.Dispose();
        _folder.Dispose();
    }

    [Fact]
    public async Task RunAsync_StoredPhoto_PutsRenditionsBesideIt()
    {
        var key = await StoreAsync(Drawing.Jpeg(1000, 600));

        var first = Assert.IsType<ImageWork.Done>(await RunAsync(key));
        var second = Assert.IsType<ImageWork.Done>(await RunAsync(key));

        Assert.Equal([1000, 960, 480], first.Renditions.Select(rendition => rendition.Width));
        Assert.Equal(first.Renditions, second.Renditions);
        Assert.All(first.Renditions, rendition => Assert.True(_store.Contains(MediaKey.Rendition(key.Hash, rendition.Width))));
        Assert.Equal(4, _folder.Files().Length);
    }

    [Fact]
    public async Task RunAsync_StoredFileThatDoesNotDecode_AddsNothing()
    {
        var png = Drawing.Png(64, 48);
        png.AsSpan(png.AsSpan().IndexOf("IDAT"u8) + 8, 20).Fill(0xEE);
        var key = await StoreAsync(png);

        Assert.IsType<ImageWork.Refused>(await RunAsync(key));

        Assert.Single(_folder.Files());
    }

    [Fact]
    public async Task RunAsync_UnknownPhoto_Throws()
    {
        var key = MediaKey.Original(await Sha256.OfAsync(new MemoryStream([1]), default), ImageKind.Jpeg);

        await Assert.ThrowsAsync<FileNotFoundException>(() => RunAsync(key));
    }

    private Task<ImageWork> RunAsync(MediaKey key) => new RenditionMaker(_store, _worker).RunAsync(key, Domain.Photos.RenditionWidths.All, default);

    private async Task<MediaKey> StoreAsync(byte[] file)
    {
        var key = MediaKey.Original(await Sha256.OfAsync(new MemoryStream(file), default), ImageKind.Jpeg);
        await _store.WriteAsync(key, new MemoryStream(file), default);
        return key;
    }
}
