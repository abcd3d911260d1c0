using Catalogue.Domain.Packages;

namespace Catalogue.Domain.Tests.Packages;

public sealed class PackageReadingTests
{
    [Theory]
    [InlineData("sop8", "SOIC-8", "SOIC-8")]
    [InlineData("SOIC-8_3.9x4.9mm_P1.27mm", null, "SOIC-8")]
    [InlineData("R0805", null, "0805")]
    [InlineData("radial, Ø 18 mm", null, "radial, Ø 18 mm")]
    [InlineData("E3,5-8", "radial", "E3,5-8")]
    [InlineData("WSON-8 2x2", "DFN-8", "WSON-8 2x2")]
    [InlineData("FOO-77X", null, "FOO-77X")]
    public void CanonicalBesideAndGrouping_Text_SayNoLessThanIt(string text, string? beside, string grouping)
    {
        var reading = PackageText.Read(text);

        Assert.Equal((beside, grouping), (reading.CanonicalBeside, reading.Grouping));
    }
}
