using Catalogue.Site.Figures;

namespace Catalogue.Site.Tests.Figures;

public sealed class FigureScaleTests
{
    [Theory]
    [InlineData(0.7, 1.9, 0.4, 2)]
    [InlineData(0.7, 2.7, 0.4, 2.8)]
    [InlineData(0.2, 1.5, 0, 2)]
    [InlineData(0.2, 3.5, 0, 4)]
    [InlineData(0.5, 99, 0, 10)]
    public void For_Values_TakesTheNarrowestScaleThatHoldsThem(double low, double high, double from, double to)
    {
        var scale = FigureScale.For([low, null, high], 1);
        Assert.Equal((from, to, 1.0), (scale.From, scale.To, scale.Line!.Value));
        Assert.Equal(from, scale.Graduations.First());
        Assert.Equal(to, scale.Graduations.Last());
    }

    [Fact]
    public void For_NoValues_StillHasItsLine() => Assert.Equal("37.5%", FigureScale.For([null], 1).At(1));

    [Theory]
    [InlineData(-5, "0%")]
    [InlineData(0.4, "0%")]
    [InlineData(1.2, "50%")]
    [InlineData(7, "100%")]
    public void At_Value_StaysOnTheScale(double value, string at) => Assert.Equal(at, new FigureScale(0.4, 2, 0.2, 1, true).At(value));

    [Fact]
    public void For_RuleThatIsGone_IsCalledByItsCode() => Assert.Equal("Old rule", FigureWords.For("old_rule").Title);
}
