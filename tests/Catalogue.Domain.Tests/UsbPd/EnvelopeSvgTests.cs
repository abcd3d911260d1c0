using System.Globalization;
using System.Xml.Linq;
using Catalogue.Domain.UsbPd;
using CsCheck;

namespace Catalogue.Domain.Tests.UsbPd;

public sealed class EnvelopeSvgTests
{
    [Fact]
    public void Of_FixedAndProgrammable_DrawsStemsAndAnAreaAndSaysBoth()
    {
        var svg = Drawn("0x0801912C", "0x0002D12C", "0xC0DC213C")!;
        Assert.Equal("Voltage against current offered: 5\u00A0V 3\u00A0A; 9\u00A0V 3\u00A0A; 3.3 to 11\u00A0V, 3\u00A0A, programmable", svg.Attribute("aria-label")!.Value);
        Assert.Equal(2, Of(svg, "head").Count());
        // 11 V of 12.65 V across, 3 A of 3.45 A up.
        Assert.Equal("M26.09 100L26.09 13.04L86.96 13.04L86.96 100Z", Assert.Single(Of(svg, "pps")).Attribute("d")!.Value);
        Assert.Equal(["39.53%", "71.15%"], Of(svg, "head").Select(head => head.Attribute("cx")!.Value));
        Assert.Empty(Of(svg, "pps2"));
    }

    [Fact]
    public void Of_PowerLimitedSupply_IsDashed()
    {
        var svg = Drawn("0x0801912C", "0xC9A43264")!;
        Assert.Empty(Of(svg, "pps"));
        Assert.Single(Of(svg, "pps2"));
        Assert.Contains("power limited", svg.Attribute("aria-label")!.Value, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData]
    [InlineData("nonsense")]
    [InlineData("0x00000000")]
    [InlineData("0x00019000")]
    public void Of_NothingOffered_DrawsNothing(params string[] words) => Assert.Null(EnvelopeSvg.Of(words));

    [Fact]
    public void Of_SupplyOfNoCurrent_StandsNeitherInThePictureNorInItsLabel()
    {
        var svg = Drawn("0x0801912C", "0x0002D000")!;
        Assert.Single(Of(svg, "head"));
        Assert.DoesNotContain("9\u00A0V", svg.Attribute("aria-label")!.Value, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_AnyWords_IsWellFormedStaysOnItsGroundAndBringsNoStyle() =>
        Gen.UInt.Array[1, 11].Sample(words =>
        {
            if (Drawn([.. words.Select(word => $"0x{word:X8}")]) is not { } svg)
                return;
            Assert.All(svg.DescendantsAndSelf().SelectMany(element => element.Attributes()), attribute => Assert.DoesNotContain(attribute.Name.LocalName, new[] { "style", "onload", "fill", "stroke", "href" }));
            Assert.All(Of(svg, "head").SelectMany(head => new[] { head.Attribute("cx")!, head.Attribute("cy")! }), at => Assert.InRange(double.Parse(at.Value.TrimEnd('%'), CultureInfo.InvariantCulture), 0, 100));
            Assert.True(Of(svg, "grid").Count() <= 14);
        });

    private static XElement? Drawn(params string[] words) => EnvelopeSvg.Of(words) is { } svg ? XElement.Parse(svg) : null;

    private static IEnumerable<XElement> Of(XElement svg, string cssClass) => svg.Descendants().Where(element => element.Attribute("class")?.Value == cssClass);
}
