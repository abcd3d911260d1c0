using Catalogue.Domain.Identification;
using CsCheck;

namespace Catalogue.Domain.Tests.Identification;

public sealed class MarkingReadingsTests
{
    [Fact]
    public void AllLines_MoreThanAreReadForNumbers_KeepsThemAll()
    {
        var marking = string.Join(" / ", Enumerable.Range(10, 12).Select(i => $"QX{i}"));
        Assert.Equal(12, MarkingReadings.AllLines(marking).Count);
        Assert.Equal(MarkingReadings.AllLines(marking).Take(8), MarkingReadings.Lines(marking));
    }

    [Fact]
    public void Of_MakerNumberAndDate_PutsTheNumberFirst()
    {
        var readings = MarkingReadings.Of("wave in a circle\n2317 B\nQX4R065N-TR", _ => false);
        Assert.Equal("QX4R065NTR", readings[0].Signs);
        Assert.Contains(readings, reading => reading is { Signs: "QX4R065N", How: "without its ending 'TR'" });
    }

    [Fact]
    public void Of_ANumberOverTwoLines_ReadsThemTogetherInBothOrders()
    {
        var signs = MarkingReadings.Of("QX4R\n065N", _ => false).Select(reading => reading.Signs).ToList();
        Assert.Contains("QX4R065N", signs);
        Assert.Contains("065NQX4R", signs);
    }

    [Fact]
    public void Of_AMarkThatReadsUpsideDown_ReadsItTurnedToo() => Assert.Contains(MarkingReadings.Of("6190", _ => false), reading => reading.Signs == "0619");

    [Fact]
    public void Of_AMakersName_IsNoNumber() => Assert.Equal("QX4R065N", Assert.Single(MarkingReadings.Of("M4RNHOLT\nQX4R065N", line => line == "M4RNHOLT")).Signs);

    [Theory]
    [InlineData("")]
    [InlineData("-- / --")]
    [InlineData("????")]
    [InlineData("🙂 🙃")]
    [InlineData("\u202e\u200b\ud800")]
    public void Of_NothingToRead_IsEmpty(string marking) => Assert.Empty(MarkingReadings.Of(marking, _ => false));

    [Fact]
    public void Of_AnyText_IsBoundedAndOrdered() =>
        Gen.String[0, MarkingReadings.MaxMarkingLength].Sample(marking =>
        {
            var readings = MarkingReadings.Of(marking, _ => false);
            Assert.True(readings.Count <= MarkingReadings.MaxReadings);
            Assert.Equal(readings.Select(reading => reading.Signs).Distinct().Count(), readings.Count);
            Assert.All(readings, reading => Assert.InRange(reading.Signs.Length, 1, MarkingKeys.MaxLength));
            Assert.Equal(readings.OrderBy(reading => reading.Cost).Select(reading => reading.Cost), readings.Select(reading => reading.Cost));
        });
}
