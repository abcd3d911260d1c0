using Catalogue.Data.Teardowns;

namespace Catalogue.Lab.Tests;

public sealed class LabWordsTests
{
    [Theory]
    [InlineData(1, 1, "single")]
    [InlineData(4, 1, "4 in parallel")]
    [InlineData(1, 2, "2 in series")]
    [InlineData(3, 2, "2 in series of 3 in parallel")]
    public void Arrangement_Counts_AreSaidInWords(int parallel, int series, string words) => Assert.Equal(words, LabWords.Arrangement(parallel, series));

    [Fact]
    public void Problem_RefusedField_IsNamedInWords() =>
        Assert.Equal(
            "Brand is empty; give it a text of 1 to 120 characters.",
            new ChangeOutcome<int>.Refused("product.brand", "product.brand is empty; give it a text of 1 to 120 characters.").Problem());

    [Fact]
    public void Problem_Done_IsNone() => Assert.Null(new ChangeOutcome<int>.Done(1).Problem());

    [Theory]
    [InlineData(59, "just now")]
    [InlineData(60, "1\u00A0min ago")]
    [InlineData(599, "9\u00A0min ago")]
    [InlineData(3600, "1\u00A0h ago")]
    [InlineData(86_400, "1\u00A0day ago")]
    [InlineData(200_000, "2\u00A0days ago")]
    public void Ago_Age_IsInWholeUnits(int seconds, string expected) => Assert.Equal(expected, LabWords.Ago(TimeSpan.FromSeconds(seconds)));

    [Fact]
    public void Moment_OfAnotherDay_SaysTheDay()
    {
        var now = new DateTimeOffset(2031, 5, 6, 14, 0, 0, TimeSpan.Zero);

        Assert.Equal("13:58", LabWords.Moment(now.AddMinutes(-2), now, TimeZoneInfo.Utc));
        Assert.Equal("5 May 2031, 13:58", LabWords.Moment(now.AddMinutes(-2).AddDays(-1), now, TimeZoneInfo.Utc));
    }
}
