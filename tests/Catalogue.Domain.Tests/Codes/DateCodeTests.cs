using Catalogue.Domain.Codes;

namespace Catalogue.Domain.Tests.Codes;

public sealed class DateCodeTests
{
    private static readonly DateOnly AsOf = new(2027, 1, 31);

    [Theory]
    [InlineData("2314", "2023, week 14; 2014, week 23", "2023-04-03")]
    [InlineData("2053", "2020, week 53", "2020-12-28")]
    [InlineData("2653", "2026, week 53", "2026-12-28")]
    [InlineData("1423", "2014, week 23; 2023, week 14", "2014-06-02")]
    [InlineData("4523", "2023, week 45", "2023-11-06")]
    [InlineData("314", "2023, week 14; 2013, week 14", "2023-04-03")]
    [InlineData("N5", "2021-05; 2001-05", "2021-05-01")]
    [InlineData("RD", "2023-12; 2003-12", "2023-12-01")]
    [InlineData("TO", "2025-10; 2005-10", "2025-10-01")]
    [InlineData("HN", "2016-11; 1996-11", "2016-11-01")]
    public void Decode_Code_GivesReadingsLikeliestFirst(string code, string readings, string firstDay)
    {
        var decoded = DateCode.Decode(code, AsOf);

        Assert.Equal(readings, string.Join("; ", decoded));
        Assert.Equal(DateOnly.Parse(firstDay, System.Globalization.CultureInfo.InvariantCulture), decoded[0].FirstDay);
    }

    [Theory]
    [InlineData("2453")]  // 2024 has 52 weeks
    [InlineData("2300")]  // there is no week zero
    [InlineData("G5")]    // G is no year letter
    [InlineData("N0")]
    [InlineData("12345")]
    [InlineData("")]
    public void Decode_ImpossibleCode_IsNoDate(string code) => Assert.Empty(DateCode.Decode(code, AsOf));

    [Fact]
    public void Decode_TwoPossibleOrders_LowersTheConfidence()
    {
        Assert.Equal([Certainty.Medium, Certainty.Low], DateCode.Decode("2314", AsOf).Select(reading => reading.Confidence));
        Assert.Equal([Certainty.High], DateCode.Decode("2053", AsOf).Select(reading => reading.Confidence));
        Assert.Equal([Certainty.Medium], DateCode.Decode("4523", AsOf).Select(reading => reading.Confidence));
    }

    [Fact]
    public void Decode_LaterThanTheGivenDay_IsNeverRead()
    {
        Assert.Empty(DateCode.Decode("2705", AsOf));
        Assert.Equal("2027, week 4", DateCode.Decode("2704", AsOf)[0].ToString());
    }

    [Fact]
    public void Decode_EveryYearLetter_RepeatsAfterTwentyYears()
    {
        var year = 2010;
        foreach (var letter in "ABCDEFHJKLMNPRSTUVWX")
            Assert.Equal([year + 20, year++], DateCode.Decode($"{letter}1", new DateOnly(2049, 12, 31)).Select(reading => reading.Year));
    }
}
