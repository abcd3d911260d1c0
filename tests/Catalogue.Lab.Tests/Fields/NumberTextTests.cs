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
}
