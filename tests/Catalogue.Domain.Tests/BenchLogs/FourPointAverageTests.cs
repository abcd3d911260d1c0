using Catalogue.Domain.BenchLogs;

namespace Catalogue.Domain.Tests.BenchLogs;

public sealed class FourPointAverageTests
{
    [Theory]
    [InlineData(5, 3, new[] { 17.2, 12.95, 8.72, 4.5 }, 0.858561)]
    [InlineData(20, 3.25, new[] { 72.5, 54.2, 36.3, 18.5 }, 0.892423)]
    [InlineData(12, 1, new[] { 15.0, 11.2, 7.6, 4.0 }, 0.785761)]
    public void OfNameplate_FourInputs_IsTheMeanOfFourRatios(double volt, double ampere, double[] inputW, double expected)
    {
        var result = Assert.IsType<FourPointAverage.Result.Computed>(FourPointAverage.OfNameplate(volt, ampere, inputW));

        Assert.Equal(expected, result.Average, 5e-7);
        Assert.Equal(volt * ampere / inputW[0], result.Efficiencies[0], 1e-12);
    }

    [Theory]
    [InlineData(new[] { 17.2, 12.95, 8.72 })]
    [InlineData(new[] { 17.2, 12.95, 8.72, 0 })]
    [InlineData(new[] { 17.2, 12.95, 8.72, -4 })]
    [InlineData(new[] { 17.2, 12.95, double.NaN, 4 })]
    [InlineData(new[] { 17.2, double.PositiveInfinity, 8.72, 4 })]
    public void Of_MissingOrAbsurdPowers_IsUnknownWithTheReason(double[] inputW) =>
        Assert.NotEmpty(Assert.IsType<FourPointAverage.Result.Unknown>(FourPointAverage.OfNameplate(5, 3, inputW)).Reason);
}
