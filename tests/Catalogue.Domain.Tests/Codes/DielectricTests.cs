using Catalogue.Domain.Codes;

namespace Catalogue.Domain.Tests.Codes;

public sealed class DielectricTests
{
    [Theory]
    [InlineData("X7R", -55, 125, 15, -15)]
    [InlineData("x5r", -55, 85, 15, -15)]
    [InlineData("X6S", -55, 105, 22, -22)]
    [InlineData("X7T", -55, 125, 22, -33)]
    [InlineData("X8R", -55, 150, 15, -15)]
    [InlineData("Y5V", -30, 85, 22, -82)]
    [InlineData("Z5U", 10, 85, 22, -56)]
    [InlineData("Y5P", -30, 85, 10, -10)]
    [InlineData("X7P", -55, 125, 10, -10)]
    public void Find_SecondClass_GivesLimits(string code, int low, int high, double rise, double fall)
    {
        var dielectric = Dielectric.Find(code)!;

        Assert.Equal((2, low, high, rise, fall), (dielectric.Class, dielectric.LowDegC!.Value, dielectric.HighDegC!.Value, dielectric.RisePercent!.Value, dielectric.FallPercent!.Value));
    }

    [Theory]
    [InlineData("C0G", 0, 30)]
    [InlineData("NP0", 0, 30)]
    [InlineData("npo", 0, 30)]
    [InlineData("U2J", -750, 120)]
    public void Find_FirstClass_GivesSlope(string code, double slope, double spread)
    {
        var dielectric = Dielectric.Find(code)!;

        Assert.Equal((1, slope, spread), (dielectric.Class, dielectric.SlopePpmPerDegC!.Value, dielectric.SlopeSpreadPpmPerDegC!.Value));
    }

    [Theory]
    [InlineData("X3R")]
    [InlineData("A7R")]
    [InlineData("X7")]
    [InlineData("")]
    public void Find_OtherText_IsNone(string code) => Assert.Null(Dielectric.Find(code));

    [Theory]
    [InlineData("B", "3528-21", 3.5, 2.8, 2.1)]
    [InlineData("7343-43", "7343-43", 7.3, 4.3, 4.3)]
    public void TantalumCase_LetterOrSize_IsFound(string text, string size, double length, double width, double height)
    {
        var found = TantalumCase.Find(text)!;

        Assert.Equal((size, length, width, height), (found.MetricSize, found.LengthMm, found.WidthMm, found.MaxHeightMm));
    }
}
