using Bunit;
using Catalogue.Lab.Workbench;

namespace Catalogue.Lab.Tests.Workbench;

public sealed class KeyStripTests : LabContext
{
    [Theory]
    [InlineData("P", "place a callout")]
    [InlineData("B", "box")]
    [InlineData("H", "no balloons")]
    [InlineData("J", "row down")]
    [InlineData("K", "row down, up")]
    [InlineData("/", "filter")]
    [InlineData("Del", "remove")]
    [InlineData("Esc", "close")]
    [InlineData("Alt", "take a family")]
    public void Strip_Key_IsNamedWithWhatItDoes(string key, string words)
    {
        var strip = Render<KeyStrip>();

        Assert.Contains(strip.FindAll("span"), span => span.QuerySelectorAll("kbd").Any(kbd => kbd.TextContent == key) && span.TextContent.Contains(words, StringComparison.Ordinal));
    }

    [Fact]
    public void Strip_ThreePlaces_AreNamed() =>
        Assert.Equal(["Outside fields", "On a callout", "In a field"], Render<KeyStrip>().FindAll(".where").Select(place => place.TextContent));
}
