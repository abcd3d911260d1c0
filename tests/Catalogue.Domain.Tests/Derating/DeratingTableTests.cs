using Catalogue.Domain.Components;
using Catalogue.Domain.Derating;
using Catalogue.Domain.Figures;

namespace Catalogue.Domain.Tests.Derating;

public sealed class DeratingTableTests
{
    [Fact]
    public void All_Factors_LieAboveZeroAndAtMostOne()
    {
        var factors = DeratingTable.All.Where(row => row.Measure is DeratingMeasure.Factor).ToList();

        Assert.True(factors.Count > 40, $"Only {factors.Count} factors.");
        Assert.All(factors, row => Assert.InRange(row.Value, 0.1, 1));
    }

    [Fact]
    public void All_Rows_AreDifferent() => Assert.Equal(
        DeratingTable.All.Count, DeratingTable.All.Select(row => (row.Source, row.Part, row.Parameter, row.Condition)).Distinct().Count());

    [Fact]
    public void All_Lines_FallWithTemperature() => Assert.All(DeratingTable.All.Where(row => row.Line is not null), row =>
    {
        Assert.True(row.Line!.FromDegC < row.Line.ToDegC);
        Assert.True(row.Line.FactorAtEnd < row.Value);
    });

    [Theory]
    [InlineData(FunctionClass.BladeFuse)]
    [InlineData(FunctionClass.UlCartridgeFuse)]
    [InlineData(FunctionClass.IecCartridgeFuse)]
    public void Conventions_OfFuses_AreThoseOfTheFuseFigure(FunctionClass functionClass) => Assert.Equal(
        LineTable.Default.Guideline(functionClass, StressKind.Current).Guideline!.Factor,
        Assert.Single(DeratingTable.All, row => row.Source is DeratingSource.TradeConvention && row.Part == DeratingParts.For(functionClass)).Value);

    [Theory]
    [InlineData(FunctionClass.Switch, DeratingPart.Mosfet)]
    [InlineData(FunctionClass.BipolarTransistor, null)]
    [InlineData(FunctionClass.Rectifier, DeratingPart.RectifierDiode)]
    [InlineData(FunctionClass.AluminiumCapacitor, DeratingPart.AluminiumCapacitor)]
    [InlineData(FunctionClass.SafetyCapacitor, null)]
    [InlineData(FunctionClass.Capacitor, null)]
    [InlineData(null, null)]
    public void For_RecordedPart_GivesItsClass(FunctionClass? functionClass, DeratingPart? part) => Assert.Equal(part, DeratingParts.For(functionClass));

    [Theory]
    [InlineData(175, 110)]
    [InlineData(125, 85)]
    public void HighestTemperature_OfASemiconductor_IsTheLowerOfTwo(double rated, double highest) => Assert.Equal(
        highest, DeratingTable.UsableFor(DeratingPart.Mosfet, DeratingParameter.JunctionTemperature).Single().HighestTemperature(rated));

    [Fact]
    public void HighestTemperature_OfAFactor_IsNone() =>
        Assert.Null(DeratingTable.UsableFor(DeratingPart.Connector, DeratingParameter.Current).First().HighestTemperature(105));
}
