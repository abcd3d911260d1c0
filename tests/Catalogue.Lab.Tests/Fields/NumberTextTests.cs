using Catalogue.Domain.Quantities;
using Catalogue.Lab.Fields;

namespace Catalogue.Lab.Tests.Fields;

public sealed class NumberTextTests
{
    [Theory]
    [InlineData(22.125)]
    [InlineData(0.925)]
    [InlineData(1.5)]
    [InlineData(600)]
    [InlineData(1234.567)]
    [InlineData(0.00033)]
    public void Print_AnyNumber_ReadsBackTheSame(double value)
    {
        var (read, problem) = NumberText.Read(NumberText.Print(value), Unit.Volt);

        Assert.Null(problem);
        Assert.Equal(value, read);
    }

    [Fact]
    public void Read_WithPrefix_ComesInTheUnitOfTheField() => Assert.Equal((0.0034, (string?)null), NumberText.Read("3.4 mohm", Unit.Ohm));

    [Fact]
    public void Read_OtherUnit_SaysBoth()
    {
        var (value, problem) = NumberText.Read("35 A", Unit.Volt);

        Assert.Null(value);
        Assert.Contains("in A", problem, StringComparison.Ordinal);
        Assert.Contains("in V", problem, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_ThousandsOrDecimals_AsksWhich()
    {
        var (value, problem) = NumberText.Read("1.000", Unit.Watt);

        Assert.Null(value);
        Assert.Contains("only one is meant", problem, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_EmptyField_IsNoValueAndNoProblem() => Assert.Equal(((double?)null, (string?)null), NumberText.Read("  ", Unit.Watt));

    [Fact]
    public void ReadDay_OtherOrder_SaysHowToWriteIt() => Assert.Contains("2026-03-09", NumberText.ReadDay("9.3.2026").Problem, StringComparison.Ordinal);

    [Theory]
    [InlineData("7.2", 7.2)]
    [InlineData("7,2 mm", 7.2)]
    [InlineData("0.0072 m", 7.2)]
    [InlineData("720 µm", 0.72)]
    [InlineData(" ", null)]
    public void ReadMillimetres_Length_IsInMillimetre(string text, double? expected) => Assert.Equal((expected, null), NumberText.ReadMillimetres(text));

    [Theory]
    [InlineData("7 V")]
    [InlineData("wide")]
    public void ReadMillimetres_SomethingElse_IsAProblem(string text)
    {
        var (value, problem) = NumberText.ReadMillimetres(text);

        Assert.Null(value);
        Assert.NotNull(problem);
    }

    [Theory]
    [InlineData(0.72)]
    [InlineData(6.3)]
    [InlineData(7.125)]
    public void PrintMillimetres_ReadAgain_IsTheSame(double value) => Assert.Equal((value, null), NumberText.ReadMillimetres(NumberText.PrintMillimetres(value)));

    // An hour ahead in winter, two in summer: on 26 October 2031 the clock shows two to three twice, on 30 March it leaves that hour out.
    private static readonly TimeZoneInfo Zone = TimeZoneInfo.CreateCustomTimeZone(
        "bench",
        TimeSpan.FromHours(1),
        "bench",
        "winter",
        "summer",
        [
            TimeZoneInfo.AdjustmentRule.CreateAdjustmentRule(
                new DateTime(2031, 1, 1),
                new DateTime(2031, 12, 31),
                TimeSpan.FromHours(1),
                TimeZoneInfo.TransitionTime.CreateFixedDateRule(new DateTime(1, 1, 1, 2, 0, 0), 3, 30),
                TimeZoneInfo.TransitionTime.CreateFixedDateRule(new DateTime(1, 1, 1, 3, 0, 0), 10, 26)),
        ]);

    [Theory]
    [InlineData("2031-05-06T14:05", "2031-05-06T12:05:00Z")]
    [InlineData("2031-01-06T14:05:30", "2031-01-06T13:05:30Z")]
    [InlineData("2031-10-26T02:30", "2031-10-26T00:30:00Z")]
    public void ReadMoment_ByTheClockOfAZone_IsTheEarliestItCanBe(string text, string utc)
    {
        var (moment, problem) = NumberText.ReadMoment(text, Zone);

        Assert.Null(problem);
        Assert.Equal(DateTimeOffset.Parse(utc, System.Globalization.CultureInfo.InvariantCulture), moment);
    }

    [Theory]
    [InlineData("2031-03-30T02:30")]
    [InlineData("2031-05-06")]
    [InlineData("yesterday")]
    public void ReadMoment_NoMoment_IsAProblem(string text) => Assert.NotNull(NumberText.ReadMoment(text, Zone).Problem);

    [Fact]
    public void Print_Moment_ReadsBackToTheMinute()
    {
        var moment = new DateTimeOffset(2031, 5, 6, 12, 5, 42, TimeSpan.Zero);

        Assert.Equal("2031-05-06T14:05", NumberText.Print(moment, Zone));
        Assert.Equal(moment.AddSeconds(-42), NumberText.ReadMoment(NumberText.Print(moment, Zone), Zone).Value);
        Assert.Equal("", NumberText.Print(null, Zone));
    }
}
