using Catalogue.Media.Photos;

namespace Catalogue.Media.Tests.Photos;

public sealed class MediaKeyTests
{
    private const string Digits = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
    private static readonly Sha256 Hash = Sha256.Parse(Digits);

    [Fact]
    public void RelativePath_Original_LiesTwoFoldersDeep() =>
        Assert.Equal($"ba/78/{Digits}.png", MediaKey.Original(Hash, ImageKind.Png).RelativePath);

    [Fact]
    public void RelativePath_Rendition_NamesItsWidth() => Assert.Equal($"ba/78/{Digits}-w960.jpg", MediaKey.Rendition(Hash, 960).RelativePath);

    [Fact]
    public void TryParse_FileName_GivesTheKeyBack() => Assert.All(
        [MediaKey.Original(Hash, ImageKind.Jpeg), MediaKey.Original(Hash, ImageKind.Webp), MediaKey.Rendition(Hash, 480)],
        key => Assert.True(MediaKey.TryParse(key.FileName, out var parsed) && parsed == key));

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData(".jpg")]
    [InlineData(Digits)]
    [InlineData(Digits + ".svg")]
    [InlineData(Digits + ".JPG")]
    [InlineData(Digits + ".jpg.jpg")]
    [InlineData(Digits + "-.jpg")]
    [InlineData(Digits + "_w960.jpg")]
    [InlineData(Digits + "-W960.jpg")]
    [InlineData(Digits + "-w/../../x.jpg")]
    [InlineData(Digits + "-w\\x.jpg")]
    [InlineData(Digits + "-abcdefghijabcdefghijabcdefghijabc.jpg")]
    [InlineData("../" + Digits + ".jpg")]
    [InlineData("ba/78/" + Digits + ".jpg")]
    public void TryParse_AnythingElse_IsRefused(string? fileName) => Assert.False(MediaKey.TryParse(fileName, out _));

    [Theory]
    [InlineData(0)]
    [InlineData(-480)]
    [InlineData(16_385)]
    public void Rendition_ImpossibleWidth_Throws(int width) => Assert.Throws<ArgumentOutOfRangeException>(() => MediaKey.Rendition(Hash, width));
}
