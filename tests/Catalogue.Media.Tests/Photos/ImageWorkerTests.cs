using Catalogue.Media.Photos;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.Formats.Png;
using SixLabors.ImageSharp.Metadata.Profiles.Exif;
using SixLabors.ImageSharp.Metadata.Profiles.Iptc;
using SixLabors.ImageSharp.PixelFormats;

namespace Catalogue.Media.Tests.Photos;

public sealed class ImageWorkerTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(8)]
    public void Run_EachOrientation_GivesUprightRenditions(int orientation)
    {
        var answer = Derive(Drawing.WithExif(Drawing.Jpeg(120, 80, orientation), orientation), "60,120");

        Assert.Equal((120, 80), (answer.Done!.Width, answer.Done.Height));
        foreach (var (width, height) in new[] { (120, 80), (60, 40) })
        {
            using var picture = Image.Load<Rgba32>(Output(width));
            Assert.Equal((width, height), (picture.Width, picture.Height));
            Assert.True(Drawing.Close(Drawing.TopLeft, picture[width / 4, height / 4]));
            Assert.True(Drawing.Close(Drawing.TopRight, picture[width * 3 / 4, height / 4]));
            Assert.True(Drawing.Close(Drawing.BottomLeft, picture[width / 4, height * 3 / 4]));
            Assert.True(Drawing.Close(Drawing.BottomRight, picture[width * 3 / 4, height * 3 / 4]));
        }
    }

    [Fact]
    public void Run_PictureNarrowerThanAWidth_IsNeverEnlarged()
    {
        var answer = Derive(Drawing.Jpeg(1000, 500), "480,960,1920,4000");

        Assert.Equal([(1000, 500), (960, 480), (480, 240)], answer.Done!.Renditions.Select(file => (file.Width, file.Height)));
        Assert.Equal(["w1000.jpg", "w480.jpg", "w960.jpg"], _folder.Files("out").Select(Path.GetFileName));
    }

    [Theory]
    [InlineData("png")]
    [InlineData("webp-lossless")]
    [InlineData("webp-lossy")]
    public void Run_OtherFormats_GiveJpegRenditions(string format)
    {
        var file = format == "png" ? Drawing.Png(64, 48) : Drawing.Webp(64, 48, format == "webp-lossless");

        var answer = Derive(file, "32");

        Assert.NotNull(answer.Done);
        using var picture = Image.Load<Rgba32>(Output(32), out var written);
        Assert.Equal("JPEG", written.Name);
        Assert.True(Drawing.Close(Drawing.TopLeft, picture[8, 6]));
        Assert.True(Drawing.Close(Drawing.BottomRight, picture[24, 18]));
    }

    [Fact]
    public void Run_TransparentPng_IsLaidOnWhite()
    {
        using var clear = new Image<Rgba32>(40, 40, new Rgba32(0, 0, 0, 0));

        Derive(Drawing.Encode(clear, new PngEncoder()), "40");

        using var picture = Image.Load<Rgba32>(Output(40));
        Assert.True(Drawing.Close(new Rgba32(255, 255, 255), picture[20, 20]));
    }

    [Fact]
    public void Run_OriginalWithPlaceAndNames_LeavesThemOutOfRenditions()
    {
        using var picture = Drawing.Stored(64, 48, 1);
        picture.Metadata.ExifProfile = new ExifProfile();
        picture.Metadata.ExifProfile.SetValue(ExifTag.GPSLatitude, [new Rational(52), new Rational(30), new Rational(0)]);
        picture.Metadata.ExifProfile.SetValue(ExifTag.Artist, "Invented Photographer");
        picture.Metadata.IptcProfile = new IptcProfile();
        picture.Metadata.IptcProfile.SetValue(IptcTag.City, "Inventedville");
        var original = Drawing.WithSegment(Drawing.Jpeg(picture), 0xE1, [.. "http://ns.adobe.com/xap/1.0/\0"u8, .. "<x:xmpmeta xmlns:x='adobe:ns:meta/'/>"u8]);
        Assert.NotNull(Image.Identify(original).Metadata.ExifProfile?.GetValue(ExifTag.GPSLatitude));

        Derive(original, "32,64");

        Assert.All([32, 64], width =>
        {
            var written = File.ReadAllBytes(Output(width));
            var metadata = Image.Identify(written).Metadata;
            Assert.Null(metadata.ExifProfile);
            Assert.Null(metadata.XmpProfile);
            Assert.Null(metadata.IptcProfile);
            Assert.Equal(-1, written.AsSpan().IndexOf("Exif"u8));
            Assert.Equal(-1, written.AsSpan().IndexOf("Invented"u8));
            Assert.Equal(-1, written.AsSpan().IndexOf("adobe:ns"u8));
        });
    }

    [Fact]
    public void Run_OriginalWithColourProfile_KeepsItInRenditions()
    {
        Derive(Drawing.WithProfile(Drawing.Jpeg(64, 48), Drawing.RgbProfile), "32");

        using var written = File.OpenRead(Output(32));
        Assert.Equal(Drawing.RgbProfile, Assert.IsType<ImageHeader.Recognised>(ImageHeader.Read(written)).ColourProfile);
    }

    [Fact]
    public void Run_PixelsThatDoNotDecode_AreRefusedAndLeaveNothing()
    {
        var png = Drawing.Png(64, 48);
        var data = png.AsSpan().IndexOf("IDAT"u8) + 8;
        png.AsSpan(data, 20).Fill(0xEE);

        var answer = Derive(png, "32,64");

        Assert.Equal(ImageRefusal.Damaged, answer.Refused!.Code);
        Assert.Empty(_folder.Files("out"));
    }

    [Fact]
    public void Run_Verify_WritesNothing()
    {
        var input = _folder.File("in", Drawing.Jpeg(64, 48));
        var output = new StringWriter();

        Assert.Equal(ImageWorker.DoneExitCode, ImageWorker.Run(["image-worker", "verify", input], output));

        Assert.Equal((64, 48), (ImageWorkerAnswer.FromJson(output.ToString())!.Done!.Width, ImageWorkerAnswer.FromJson(output.ToString())!.Done!.Height));
        Assert.Equal([input], _folder.Files());
    }

    [Fact]
    public void Run_MissingInput_IsNotBlamedOnThePicture()
    {
        var output = new StringWriter();

        Assert.Equal(ImageWorker.StorageExitCode, ImageWorker.Run(["verify", Path.Combine(_folder.Path, "none")], output));
        Assert.Null(ImageWorkerAnswer.FromJson(output.ToString()));
    }

    [Theory]
    [InlineData("")]
    [InlineData("paint in.jpg")]
    [InlineData("derive in.jpg out 480,x")]
    [InlineData("derive in.jpg out 0")]
    public void Run_MeaninglessCommand_SaysHowToCallIt(string line)
    {
        var output = new StringWriter();

        Assert.Equal(ImageWorker.UsageExitCode, ImageWorker.Run(line.Split(' '), output));
        Assert.Contains("image-worker verify", output.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Run_ThreeHundredMutations_EndInAnAnswer()
    {
        byte[][] originals =
        [
            Drawing.WithProfile(Drawing.WithExif(Drawing.Jpeg(40, 24), 6), Drawing.RgbProfile),
            Drawing.WithChunk(Drawing.Png(40, 24), "pHYs", [0, 0, 1, 0, 0, 0, 1, 0, 1]),
            Drawing.Webp(40, 24, lossless: true),
            Drawing.Webp(40, 24, lossless: false),
        ];
        var random = new Random(20260214);
        var refused = 0;

        for (var round = 0; round < 300; round++)
        {
            var mutated = (byte[])originals[round % originals.Length].Clone();
            for (var hit = random.Next(1, 6); hit > 0; hit--)
            {
                mutated[random.Next(mutated.Length)] = (byte)random.Next(256);
            }

            var answer = Derive(round % 10 == 9 ? mutated[..random.Next(mutated.Length)] : mutated, "20,40");

            refused += answer.Refused is null ? 0 : 1;
            Assert.Equal(answer.Refused is null, _folder.Files("out").Length > 0);
        }

        Assert.InRange(refused, 30, 299);
    }

    private string Output(int width) => Path.Combine(_folder.Path, "out", $"w{width}.jpg");

    /// <summary>Runs the worker in this process into a fresh "out" folder; an exception or an unreadable answer fails the test.</summary>
    private ImageWorkerAnswer Derive(byte[] file, string widths)
    {
        var output = _folder.Folder("out");
        Directory.Delete(output, recursive: true);
        _folder.Folder("out");
        var text = new StringWriter();

        var code = ImageWorker.Run(["derive", _folder.File("in", file), output, widths], text);

        var answer = ImageWorkerAnswer.FromJson(text.ToString());
        Assert.NotNull(answer);
        Assert.Equal(answer.Refused is null ? ImageWorker.DoneExitCode : ImageWorker.RefusedExitCode, code);
        return answer;
    }
}
