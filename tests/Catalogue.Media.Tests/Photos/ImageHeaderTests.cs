using System.Text;
using Catalogue.Media.Photos;

namespace Catalogue.Media.Tests.Photos;

public sealed class ImageHeaderTests
{
    public static TheoryData<string, string> ForeignFiles => new()
    {
        { "GIF89a\u0001\0\u0001\0", "GIF" },
        { "BM\u0046\0\0\0\0\0\0\0\u0036\0\0\0\u0028\0\0\0\u0001\0\0\0\u0001\0\0\0", "BMP" },
        { "II*\0\u0008\0\0\0", "TIFF" },
        { "MM\0*\0\0\0\u0008", "TIFF" },
        { "\0\0\0\u0018ftypheic\0\0\0\0", "HEIC" },
        { "\0\0\0\u0018ftypavif\0\0\0\0", "AVIF" },
        { "<?xml version=\"1.0\"?>\n<!-- a drawing -->\n<svg xmlns=\"http://www.w3.org/2000/svg\"/>", "SVG" },
        { "%PDF-1.7\n", "PDF" },
    };

    [Fact]
    public void Read_Jpeg_GivesKindAndSize() => AssertRecognised(Drawing.Jpeg(30, 20), ImageKind.Jpeg, 30, 20, 1);

    [Fact]
    public void Read_Png_GivesKindAndSize() => AssertRecognised(Drawing.Png(31, 21), ImageKind.Png, 31, 21, 1);

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Read_Webp_GivesKindAndSize(bool lossless) => AssertRecognised(Drawing.Webp(33, 23, lossless), ImageKind.Webp, 33, 23, 1);

    [Theory]
    [InlineData(1, false)]
    [InlineData(3, true)]
    [InlineData(6, false)]
    [InlineData(6, true)]
    [InlineData(8, true)]
    public void Read_JpegWithOrientation_GivesUprightSize(int orientation, bool bigEndian)
    {
        var jpeg = Drawing.WithExif(Drawing.Jpeg(30, 20, orientation), orientation, bigEndian);

        var header = Assert.IsType<ImageHeader.Recognised>(Read(jpeg));

        Assert.Equal((orientation, 30, 20), (header.Orientation, header.Width, header.Height));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(9)]
    public void Read_JpegWithInvalidOrientation_TakesItAsStored(int orientation) =>
        AssertRecognised(Drawing.WithExif(Drawing.Jpeg(30, 20), orientation), ImageKind.Jpeg, 30, 20, 1);

    [Fact]
    public void Read_ExifWhoseDirectoryLiesOutside_TakesItAsStored()
    {
        var exif = Drawing.Exif(6, bigEndian: false);
        exif[7] = 0xFF;

        AssertRecognised(Drawing.WithSegment(Drawing.Jpeg(30, 20), 0xE1, [.. "Exif\0\0"u8, .. exif]), ImageKind.Jpeg, 30, 20, 1);
    }

    [Fact]
    public void Read_PngWithExif_GivesOrientation() =>
        AssertRecognised(Drawing.WithChunk(Drawing.Png(30, 20), "eXIf", Drawing.Exif(6, bigEndian: true)), ImageKind.Png, 20, 30, 6);

    [Fact]
    public void Read_WebpWithExif_GivesOrientation() => AssertRecognised(
        Drawing.Riff(
            ("VP8X", Drawing.Canvas(30, 20, flags: 0x08)),
            Drawing.PictureChunk(Drawing.Webp(30, 20, lossless: true)),
            ("EXIF", Drawing.Exif(8, bigEndian: false))),
        ImageKind.Webp, 20, 30, 8);

    [Fact]
    public void Read_ColourProfile_IsFoundInEveryFormat()
    {
        var profile = Drawing.RgbProfile;
        byte[][] files =
        [
            Drawing.WithProfile(Drawing.Jpeg(8, 8), profile),
            Drawing.WithChunk(Drawing.Png(8, 8), "iCCP", [.. "name\0\0"u8, .. Drawing.Deflated(profile)]),
            Drawing.Riff(("VP8X", Drawing.Canvas(8, 8, 0x20)), ("ICCP", profile), Drawing.PictureChunk(Drawing.Webp(8, 8, lossless: false))),
        ];

        Assert.All(files, file => Assert.Equal(profile, Assert.IsType<ImageHeader.Recognised>(Read(file)).ColourProfile));
    }

    [Fact]
    public void Read_ColourProfileInTwoSegments_IsJoinedInOrder()
    {
        var profile = Drawing.RgbProfile;
        var second = Drawing.WithSegment(Drawing.Jpeg(8, 8), 0xE2, [.. "ICC_PROFILE\0"u8, 1, 2, .. profile[..100]]);
        var both = Drawing.WithSegment(second, 0xE2, [.. "ICC_PROFILE\0"u8, 2, 2, .. profile[100..]]);

        Assert.Equal(profile, Assert.IsType<ImageHeader.Recognised>(Read(both)).ColourProfile);
    }

    [Fact]
    public void Read_ProfileForPrinting_IsNotCarriedOn() =>
        Assert.Null(Assert.IsType<ImageHeader.Recognised>(Read(Drawing.WithProfile(Drawing.Jpeg(8, 8), Drawing.Profile("CMYK")))).ColourProfile);

    [Fact]
    public void Read_ProfileThatUnpacksPastTheLimit_IsDropped()
    {
        byte[] profile = [.. Drawing.RgbProfile, .. new byte[20_000_000]];
        var png = Drawing.WithChunk(Drawing.Png(8, 8), "iCCP", [.. "name\0\0"u8, .. Drawing.Deflated(profile)]);

        Assert.Null(Assert.IsType<ImageHeader.Recognised>(Read(png)).ColourProfile);
    }

    [Theory]
    [MemberData(nameof(ForeignFiles))]
    public void Read_ForeignFormat_IsRefusedByName(string content, string name)
    {
        var refused = AssertRefused(Encoding.Latin1.GetBytes(content), ImageRefusal.FormatNotAccepted);

        Assert.Contains(name, refused.Text, StringComparison.Ordinal);
        Assert.Contains("JPEG, PNG or WebP", refused.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_Text_IsNoPicture() => AssertRefused("Item;Qty;Marking\r\n1;2;K7A\r\n"u8.ToArray(), ImageRefusal.NotAnImage);

    [Fact]
    public void Read_Nothing_IsRefused() => AssertRefused([], ImageRefusal.Empty);

    [Fact]
    public void Read_LosslessJpeg_IsRefused()
    {
        var jpeg = Drawing.Jpeg(8, 8);
        jpeg[jpeg.AsSpan().IndexOf<byte>([0xFF, 0xC0]) + 1] = 0xC3;

        AssertRefused(jpeg, ImageRefusal.FormatNotAccepted);
    }

    [Theory]
    [InlineData(30_000, 30_000, ImageRefusal.SideTooLong)]
    [InlineData(16_385, 1, ImageRefusal.SideTooLong)]
    [InlineData(uint.MaxValue, uint.MaxValue, ImageRefusal.SideTooLong)]
    [InlineData(8_001, 8_000, ImageRefusal.TooManyPixels)]
    [InlineData(0, 8, ImageRefusal.Damaged)]
    public void Read_PngOfImpossibleSize_IsRefused(uint width, uint height, ImageRefusal reason) =>
        AssertRefused(Drawing.PngClaiming(width, height), reason);

    [Fact]
    public void Read_PngOfJustTheLargestSize_Passes() => AssertRecognised(Drawing.PngClaiming(8_000, 8_000), ImageKind.Png, 8_000, 8_000, 1);

    [Fact]
    public void Read_HundredScans_Pass() => AssertRecognised(Drawing.WithScans(Drawing.Jpeg(8, 8), 100), ImageKind.Jpeg, 8, 8, 1);

    [Fact]
    public void Read_ScanBomb_IsRefused() => AssertRefused(Drawing.WithScans(Drawing.Jpeg(8, 8), 101), ImageRefusal.TooManyScans);

    [Fact]
    public void Read_AnimatedPng_IsRefused() =>
        AssertRefused(Drawing.WithChunk(Drawing.Png(8, 8), "acTL", [0, 0, 0, 2, 0, 0, 0, 0]), ImageRefusal.Animated);

    [Fact]
    public void Read_AnimatedWebp_IsRefused() =>
        AssertRefused(Drawing.Riff(("VP8X", Drawing.Canvas(8, 8, flags: 0x02)), ("ANIM", new byte[6])), ImageRefusal.Animated);

    [Fact]
    public void Read_WebpWhoseCanvasHidesALargerPicture_IsRefused() => AssertRefused(
        Drawing.Riff(("VP8X", Drawing.Canvas(8, 8)), Drawing.PictureChunk(Drawing.Webp(64, 64, lossless: true))),
        ImageRefusal.Damaged);

    [Fact]
    public void Read_CutAnywhere_IsNeverRecognised()
    {
        byte[][] files = [Drawing.Jpeg(40, 30), Drawing.Png(40, 30), Drawing.Webp(40, 30, lossless: true), Drawing.Webp(40, 30, lossless: false)];

        Assert.All(files, file =>
        {
            for (var length = 0; length < file.Length; length++)
            {
                Assert.IsType<ImageHeader.Refused>(Read(file[..length]));
            }
        });
    }

    [Fact]
    public void Read_BytesAfterTheEnd_DoNotMatter() => AssertRecognised([.. Drawing.Jpeg(8, 8), .. new byte[100]], ImageKind.Jpeg, 8, 8, 1);

    [Fact]
    public void Read_FileLargerThanTheBuffer_IsFollowedToItsEnd()
    {
        var comment = new byte[65_000];
        var jpeg = Enumerable.Range(0, 5).Aggregate(Drawing.Jpeg(30, 20), (file, _) => Drawing.WithSegment(file, 0xFE, comment));

        AssertRecognised(jpeg, ImageKind.Jpeg, 30, 20, 1);
    }

    private static ImageHeader Read(byte[] file) => ImageHeader.Read(new MemoryStream(file));

    private static void AssertRecognised(byte[] file, ImageKind kind, int width, int height, int orientation)
    {
        var header = Assert.IsType<ImageHeader.Recognised>(Read(file));
        Assert.Equal((kind, width, height, orientation), (header.Kind, header.Width, header.Height, header.Orientation));
    }

    private static ImageHeader.Refused AssertRefused(byte[] file, ImageRefusal reason)
    {
        var refused = Assert.IsType<ImageHeader.Refused>(Read(file));
        Assert.Equal(reason, refused.Reason);
        return refused;
    }
}
