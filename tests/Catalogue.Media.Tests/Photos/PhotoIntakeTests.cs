using Catalogue.Media.Photos;

namespace Catalogue.Media.Tests.Photos;

public sealed class PhotoIntakeTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly ImageWorkerProcess _worker;
    private readonly MediaStore _store;

    public PhotoIntakeTests()
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
    public async Task ReceiveAsync_Photo_IsStoredAsItCame()
    {
        var jpeg = Drawing.WithExif(Drawing.Jpeg(120, 80, 6), 6);

        var accepted = Assert.IsType<PhotoReceipt.Accepted>(await ReceiveAsync(jpeg));

        Assert.Equal((ImageKind.Jpeg, jpeg.Length, 120, 80, 6, false),
            (accepted.Kind, accepted.Bytes, accepted.Width, accepted.Height, accepted.Orientation, accepted.WasStored));
        Assert.Equal(jpeg, await File.ReadAllBytesAsync(Assert.Single(_folder.Files())));
        Assert.Equal(MediaSoundness.Sound, await _store.VerifyAsync(accepted.Key, default));
    }

    [Fact]
    public async Task ReceiveAsync_SameContentTwice_GivesOneObject()
    {
        var png = Drawing.Png(40, 30);

        var first = Assert.IsType<PhotoReceipt.Accepted>(await ReceiveAsync(png));
        var second = Assert.IsType<PhotoReceipt.Accepted>(await ReceiveAsync(png));

        Assert.Equal(first with { WasStored = true }, second);
        Assert.Single(_folder.Files());
    }

    [Fact]
    public async Task ReceiveAsync_SameContentAtOnce_GivesOneObject()
    {
        var webp = Drawing.Webp(40, 30, lossless: true);

        var receipts = await Task.WhenAll(ReceiveAsync(webp), ReceiveAsync(webp), ReceiveAsync(webp));

        Assert.All(receipts, receipt => Assert.IsType<PhotoReceipt.Accepted>(receipt));
        Assert.Single(_folder.Files());
    }

    [Fact]
    public async Task ReceiveAsync_TruncatedJpeg_IsRefusedAtOnce()
    {
        var jpeg = Drawing.Jpeg(400, 300);

        var refused = Assert.IsType<PhotoReceipt.Refused>(await ReceiveAsync(jpeg[..(jpeg.Length / 2)]));

        Assert.Equal(ImageRefusal.Truncated, refused.Reason);
        Assert.Contains("upload the whole file", refused.Text, StringComparison.Ordinal);
        Assert.Empty(_folder.Files());
    }

    [Fact]
    public async Task ReceiveAsync_PixelsThatDoNotDecode_AreRefused()
    {
        var png = Drawing.Png(64, 48);
        png.AsSpan(png.AsSpan().IndexOf("IDAT"u8) + 8, 20).Fill(0xEE);

        Assert.Equal(ImageRefusal.Damaged, Assert.IsType<PhotoReceipt.Refused>(await ReceiveAsync(png)).Reason);
        Assert.Empty(_folder.Files());
    }

    [Fact]
    public async Task ReceiveAsync_Drawing_IsRefusedByName()
    {
        var refused = Assert.IsType<PhotoReceipt.Refused>(await ReceiveAsync("<svg xmlns='http://www.w3.org/2000/svg' onload='x()'/>"u8.ToArray()));

        Assert.Equal(ImageRefusal.FormatNotAccepted, refused.Reason);
        Assert.Empty(_folder.Files());
    }

    [Fact]
    public async Task ReceiveAsync_FileOfJustTheCap_Passes()
    {
        var jpeg = Drawing.Jpeg(40, 30);

        Assert.IsType<PhotoReceipt.Accepted>(await ReceiveAsync(jpeg, maxBytes: jpeg.Length));
    }

    [Fact]
    public async Task ReceiveAsync_OneByteOverTheCap_IsRefusedAndLeavesNothing()
    {
        var jpeg = Drawing.Jpeg(40, 30);

        var refused = Assert.IsType<PhotoReceipt.Refused>(await ReceiveAsync(jpeg, maxBytes: jpeg.Length - 1));

        Assert.Equal(ImageRefusal.TooManyBytes, refused.Reason);
        Assert.Empty(_folder.Files());
    }

    [Fact]
    public async Task ReceiveAsync_UploadThatBreaksOff_LeavesNothing()
    {
        var upload = new BreakingStream(Drawing.Jpeg(40, 30)[..200], () => throw new IOException("The client went away."));

        await Assert.ThrowsAsync<IOException>(() => new PhotoIntake(_store, _worker).ReceiveAsync(upload, default));

        Assert.Empty(_folder.Files());
    }

    [Fact]
    public async Task ReceiveAsync_CancelledWhileUploading_LeavesNothing()
    {
        using var cancel = new CancellationTokenSource();
        var upload = new BreakingStream(Drawing.Jpeg(40, 30), cancel.Cancel);

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => new PhotoIntake(_store, _worker).ReceiveAsync(upload, cancel.Token));

        Assert.Empty(_folder.Files());
    }

    [Fact]
    public async Task ReceiveAsync_WorkerThatDoesNotStart_StoresNothingAndBlamesNobody()
    {
        using var broken = new ImageWorkerProcess(
            new ImageWorkerOptions { Command = [Path.Combine(_folder.Path, "none")], ScratchFolder = _folder.Folder("scratch") }, TimeProvider.System);

        Assert.IsType<PhotoReceipt.NotChecked>(
            await new PhotoIntake(_store, broken).ReceiveAsync(new MemoryStream(Drawing.Jpeg(40, 30)), default));

        Assert.Empty(_folder.Files());
    }

    [Fact]
    public async Task ReceiveAsync_WorkerThatHangs_RefusesThePicture()
    {
        using var slow = new ImageWorkerProcess(
            new ImageWorkerOptions
            {
                Command = ["/bin/sh", "-c", "sleep 60"],
                TimeLimit = TimeSpan.FromMilliseconds(300),
                ScratchFolder = _folder.Folder("scratch"),
            },
            TimeProvider.System);

        var refused = Assert.IsType<PhotoReceipt.Refused>(
            await new PhotoIntake(_store, slow).ReceiveAsync(new MemoryStream(Drawing.Jpeg(40, 30)), default));

        Assert.Equal(ImageRefusal.TooCostly, refused.Reason);
        Assert.Contains("0.3 seconds", refused.Text, StringComparison.Ordinal);
        Assert.Empty(_folder.Files());
    }

    private Task<PhotoReceipt> ReceiveAsync(byte[] file, long maxBytes = ImageLimits.DefaultMaxUploadBytes) =>
        new PhotoIntake(_store, _worker, maxBytes).ReceiveAsync(new MemoryStream(file), default);
}
