using Catalogue.Domain.BenchLogs;

namespace Catalogue.Domain.Tests.BenchLogs;

public sealed class EfficiencyLimitsTests
{
    private const double Close = 5e-7;

    [Theory]
    [InlineData(EfficiencyScheme.LevelVi, EfficiencyClass.BasicAcdc, 1, 0.66, 0.1)]
    [InlineData(EfficiencyScheme.LevelVi, EfficiencyClass.BasicAcdc, 18, 0.850016, 0.1)]
    [InlineData(EfficiencyScheme.LevelVi, EfficiencyClass.BasicAcdc, 49, 0.877719, 0.1)]
    [InlineData(EfficiencyScheme.LevelVi, EfficiencyClass.BasicAcdc, 250, 0.88, 0.21)]
    [InlineData(EfficiencyScheme.LevelVi, EfficiencyClass.BasicAcdc, 300, 0.875, 0.5)]
    [InlineData(EfficiencyScheme.LevelVi, EfficiencyClass.LowVoltageAcdc, 0.5, 0.3455, 0.1)]
    [InlineData(EfficiencyScheme.LevelVi, EfficiencyClass.LowVoltageAcdc, 15, 0.813851, 0.1)]
    [InlineData(EfficiencyScheme.LevelVi, EfficiencyClass.LowVoltageAcdc, 60, 0.87, 0.21)]
    [InlineData(EfficiencyScheme.LevelVi, EfficiencyClass.MultipleOutput, 30, 0.81609, 0.3)]
    [InlineData(EfficiencyScheme.LevelVi, EfficiencyClass.MultipleOutput, 300, 0.86, 0.3)]
    [InlineData(EfficiencyScheme.CocV5Tier2, EfficiencyClass.BasicAcdc, 0.5, 0.419, 0.075)]
    [InlineData(EfficiencyScheme.CocV5Tier2, EfficiencyClass.BasicAcdc, 45, 0.888523, 0.075)]
    [InlineData(EfficiencyScheme.CocV5Tier2, EfficiencyClass.BasicAcdc, 240, 0.89, 0.15)]
    [InlineData(EfficiencyScheme.CocV5Tier2, EfficiencyClass.LowVoltageAcdc, 12, 0.803041, 0.075)]
    public void FourPointAndNoLoad_OfANameplate_AreTheScheme(EfficiencyScheme scheme, EfficiencyClass kind, double nameplateW, double fourPoint, double noLoadW)
    {
        Assert.Equal(fourPoint, EfficiencyLimits.FourPoint(scheme, kind, nameplateW)!.Value, Close);
        Assert.Equal(noLoadW, EfficiencyLimits.NoLoad(scheme, kind, nameplateW)!.Value, Close);
    }

    [Theory]
    [InlineData(EfficiencyClass.BasicAcdc, 1, 0.56)]
    [InlineData(EfficiencyClass.BasicAcdc, 20, 0.759697)]
    [InlineData(EfficiencyClass.BasicAcdc, 65, 0.79)]
    [InlineData(EfficiencyClass.LowVoltageAcdc, 10, 0.697336)]
    [InlineData(EfficiencyClass.LowVoltageAcdc, 25, 0.754704)]
    public void TenPercent_OfTier2_IsMarkedAsNotCrossChecked(EfficiencyClass kind, double nameplateW, double expected)
    {
        var limit = EfficiencyLimits.TenPercent(EfficiencyScheme.CocV5Tier2, kind, nameplateW)!;

        Assert.Equal(expected, limit.Value, Close);
        Assert.False(limit.IsCrossChecked);
        Assert.Null(EfficiencyLimits.TenPercent(EfficiencyScheme.LevelVi, kind, nameplateW));
    }

    [Fact]
    public void Limits_ThatASchemeDoesNotSet_AreNull()
    {
        Assert.Null(EfficiencyLimits.FourPoint(EfficiencyScheme.CocV5Tier2, EfficiencyClass.BasicAcdc, 300));
        Assert.Null(EfficiencyLimits.FourPoint(EfficiencyScheme.CocV5Tier2, EfficiencyClass.BasicAcdc, 0.2));
        Assert.Null(EfficiencyLimits.FourPoint(EfficiencyScheme.CocV5Tier2, EfficiencyClass.MultipleOutput, 30));
        Assert.Null(EfficiencyLimits.FourPoint(EfficiencyScheme.LevelVi, EfficiencyClass.Acac, 30));
        Assert.Null(EfficiencyLimits.NoLoad(EfficiencyScheme.LevelVi, EfficiencyClass.Acac, 60));
        Assert.False(EfficiencyLimits.NoLoad(EfficiencyScheme.LevelVi, EfficiencyClass.Acac, 30)!.IsCrossChecked);
        Assert.False(EfficiencyLimits.FourPoint(EfficiencyScheme.LevelVi, EfficiencyClass.MultipleOutput, 30)!.IsCrossChecked);
        Assert.True(EfficiencyLimits.FourPoint(EfficiencyScheme.LevelVi, EfficiencyClass.BasicAcdc, 30)!.IsCrossChecked);
    }

    [Theory]
    [InlineData(5, 3, EfficiencyClass.LowVoltageAcdc)]
    [InlineData(5.9, 0.55, EfficiencyClass.LowVoltageAcdc)]
    [InlineData(5, 0.5, EfficiencyClass.BasicAcdc)]
    [InlineData(6, 3, EfficiencyClass.BasicAcdc)]
    public void ClassOf_Output_FollowsSixVoltAnd550Milliampere(double volt, double ampere, EfficiencyClass expected) => Assert.Equal(expected, EfficiencyLimits.ClassOf(volt, ampere));

    [Theory]
    [InlineData(0.884475, EfficiencyScheme.CocV5Tier2, "below")]
    [InlineData(0.884475, EfficiencyScheme.LevelVi, "above")]
    [InlineData(0.88, EfficiencyScheme.LevelVi, "above")]
    public void Compare_Average_SaysTheSideAndNoVerdict(double average, EfficiencyScheme scheme, string side)
    {
        var text = EfficiencyLimits.Compare(average, scheme, EfficiencyLimits.FourPoint(scheme, EfficiencyClass.BasicAcdc, 100)!);

        Assert.Contains($"{side} the limit", text, StringComparison.Ordinal);
        Assert.DoesNotContain("pass", text, StringComparison.OrdinalIgnoreCase);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-5)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(1e300)]
    public void Limits_OfAnAbsurdNameplate_AreTheCallersBug(double nameplateW) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => EfficiencyLimits.FourPoint(EfficiencyScheme.LevelVi, EfficiencyClass.BasicAcdc, nameplateW));
}
