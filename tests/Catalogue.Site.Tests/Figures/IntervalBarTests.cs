using Bunit;
using Catalogue.Domain.Figures;
using Catalogue.Site.Figures;

namespace Catalogue.Site.Tests.Figures;

public sealed class IntervalBarTests : BunitContext
{
    private static readonly FigureScale Headroom = new(0.4, 2, 0.2, 1, true);

    [Fact]
    public void Bar_OverTheLine_IsStripedUpToItAndSaysAllNumbers()
    {
        var bar = Bar(0.7, 0.83, 0.9, Verdict.OverGuideline);
        Assert.Equal("low 0.70, nominal 0.83, high 0.90; line at 1.00", bar.Find("svg.interval").GetAttribute("aria-label"));
        Assert.Equal(("18.75%", "12.5%"), Place(bar, ".bar"));
        Assert.Equal(("18.75%", "12.5%"), Place(bar, ".over"));
        Assert.Equal("26.88%", bar.Find(".needle").GetAttribute("x"));
        Assert.Equal("37.5%", bar.Find(".line").GetAttribute("x"));
        Assert.Equal("37.5%", bar.Find(".side").GetAttribute("width"));
    }

    [Fact]
    public void Bar_AcrossTheLine_IsStripedOnlyBelowIt() => Assert.Equal(("31.25%", "6.25%"), Place(Bar(0.9, 1.1, 1.3, Verdict.Thin), ".over"));

    [Fact]
    public void Bar_InsideTheLine_IsNotStriped() => Assert.Empty(Bar(1.2, 1.3, 1.4, Verdict.Adequate).FindAll(".over"));

    [Fact]
    public void Bar_HighEndOffTheScale_GetsAnArrowInsteadOfACap()
    {
        var bar = Bar(1.2, 1.5, 9, Verdict.Adequate);
        Assert.Single(bar.FindAll(".end"));
        Assert.Single(bar.FindAll(".beyond"));
        Assert.Contains("high 9.00", bar.Find("svg.interval").GetAttribute("aria-label"), StringComparison.Ordinal);
    }

    [Fact]
    public void Bar_LessIsBetter_IsStripedAboveTheLine()
    {
        var bar = Render<IntervalBar>(parameters => parameters
            .Add(x => x.Scale, new FigureScale(0, 1, 0.2, 0.8, false)).Add(x => x.Verdict, Verdict.Thin).Add(x => x.Low, 0.7).Add(x => x.Nominal, 0.75).Add(x => x.High, 0.9));
        Assert.Equal(("80%", "20%"), Place(bar, ".side"));
        Assert.Equal(("80%", "10%"), Place(bar, ".over"));
    }

    [Fact]
    public void Bar_Unknown_IsADashedVoidWithTheLineStillDrawn()
    {
        var bar = Bar(null, null, null, Verdict.Unknown);
        Assert.Equal("not computed; line at 1.00", bar.Find("svg.interval").GetAttribute("aria-label"));
        Assert.Single(bar.FindAll(".void"));
        Assert.Single(bar.FindAll(".line"));
        Assert.Empty(bar.FindAll(".bar, .needle, .end"));
    }

    private IRenderedComponent<IntervalBar> Bar(double? low, double? nominal, double? high, Verdict verdict) => Render<IntervalBar>(parameters => parameters
        .Add(x => x.Scale, Headroom).Add(x => x.Verdict, verdict).Add(x => x.Low, low).Add(x => x.Nominal, nominal).Add(x => x.High, high));

    private static (string? X, string? Width) Place(IRenderedComponent<IntervalBar> bar, string part) => (bar.Find(part).GetAttribute("x"), bar.Find(part).GetAttribute("width"));
}
