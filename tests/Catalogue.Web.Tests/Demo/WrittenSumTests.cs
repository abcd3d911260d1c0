namespace Catalogue.Web.Tests.Demo;

public sealed class WrittenSumTests
{
    [Theory]
    [InlineData("2 + 3 × 4", 14)]
    [InlineData("(2 + 3) × 4", 20)]
    [InlineData("12 ÷ 4 ÷ 3", 1)]
    [InlineData("12 / (4 · 3)", 1)]
    [InlineData("10 − 4 − 3", 3)]
    [InlineData("−2 - −3", 1)]
    [InlineData("2^3^2", 512)]
    [InlineData("−2^2", -4)]
    [InlineData("4 × 10^−2", 0.04)]
    [InlineData("2 × √9 ÷ 3", 2)]
    [InlineData("√(9 + 16)^2", 25)]
    [InlineData("ln(exp(1.5))", 1.5)]
    [InlineData("max(0, 3 − 5) + min(2, 7)", 2)]
    [InlineData("2 * π", 2 * Math.PI)]
    public void Of_Sum_IsItsValue(string text, double value) => Assert.Equal(value, WrittenSum.Of(text), 1e-12);

    [Theory]
    [InlineData("")]
    [InlineData("2 +")]
    [InlineData("(2 + 3")]
    [InlineData("2 3")]
    [InlineData("1.2.3")]
    [InlineData("1,000")]
    [InlineData("35 A × 2")]
    [InlineData("sin(1)")]
    [InlineData("max(1)")]
    [InlineData("ln 2")]
    public void Of_NoWholeSum_IsRefused(string text) => Assert.Throws<FormatException>(() => WrittenSum.Of(text));
}
