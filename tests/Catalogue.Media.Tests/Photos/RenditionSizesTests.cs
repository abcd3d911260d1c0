using Catalogue.Media.Photos;

namespace Catalogue.Media.Tests.Photos;

public sealed class RenditionSizesTests
{
    [Fact]
    public void For_LargePicture_GivesEachWidthLargestFirst() =>
        Assert.Equal([(1920, 1440), (960, 720), (480, 360)], RenditionSizes.For(4000, 3000, [480, 1920, 960]));

    [Fact]
    public void For_SmallPicture_GivesItsOwnWidthOnce() => Assert.Equal([(300, 200)], RenditionSizes.For(300, 200, [480, 960, 1920]));

    [Fact]
    public void For_ExtremeStrip_KeepsAPixelOfHeight() => Assert.Equal([(480, 1)], RenditionSizes.For(16_384, 2, [480]));

    [Fact]
    public void For_NoWidths_Throws() => Assert.Throws<ArgumentException>(() => RenditionSizes.For(300, 200, []));

    [Fact]
    public void For_WidthOfZero_Throws() => Assert.Throws<ArgumentException>(() => RenditionSizes.For(300, 200, [480, 0]));
}
