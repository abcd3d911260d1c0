using Catalogue.Domain.Components;
using Catalogue.Domain.Derating;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Tests.Figures;

public sealed class LineTableTests
{
    [Theory]
    [InlineData(FunctionClass.Switch, StressKind.Voltage, 0.75)]
    [InlineData(FunctionClass.Rectifier, StressKind.Voltage, 0.7)]
    [InlineData(FunctionClass.Rectifier, StressKind.Current, 0.5)]
    [InlineData(FunctionClass.CeramicCapacitor, StressKind.Voltage, 0.8)]
    [InlineData(FunctionClass.FilmCapacitor, StressKind.Voltage, 0.6)]
    [InlineData(FunctionClass.AluminiumCapacitor, StressKind.Voltage, 0.8)]
    [InlineData(FunctionClass.TantalumCapacitor, StressKind.Voltage, 0.7)]
    [InlineData(FunctionClass.Connector, StressKind.Current, 0.5)]
    public void Guideline_Default_IsTheIndustrialOneFilledFromSpace(FunctionClass functionClass, StressKind stress, double factor)
    {
        var (guideline, _) = LineTable.Default.Guideline(functionClass, stress);
        Assert.Equal(factor, guideline!.Factor);
        Assert.Contains("editable", guideline.Source, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(FunctionClass.Capacitor, "no guideline")]
    [InlineData(FunctionClass.SafetyCapacitor, "no guideline")]
    [InlineData(FunctionClass.Fuse, "style of the fuse")]
    public void Guideline_NoneForThePart_SaysWhy(FunctionClass functionClass, string why)
    {
        var (guideline, whyNot) = LineTable.Default.Guideline(functionClass, StressKind.Voltage);
        Assert.Null(guideline);
        Assert.Contains(why, whyNot, StringComparison.Ordinal);
    }

    [Fact]
    public void Guideline_FallsWithTemperature_NeedsIt()
    {
        var space = new LineTable(DeratingPreset.Space, new Dictionary<string, double>());
        var (guideline, whyNot) = space.Guideline(FunctionClass.TantalumCapacitor, StressKind.Voltage);
        Assert.Null(guideline);
        Assert.Contains("temperature", whyNot, StringComparison.Ordinal);
        Assert.Equal(0.4, space.Guideline(FunctionClass.TantalumCapacitor, StressKind.Voltage, new Given(Interval.Create(70, 80, 90), Evidence.Measured, null)).Guideline!.Factor, 1e-12);
    }

    [Fact]
    public void Guideline_ChangedByTheLab_SaysSo()
    {
        var own = new LineTable(DeratingPreset.Industrial, new Dictionary<string, double> { ["switch_voltage"] = 0.9 });
        var (guideline, _) = own.Guideline(FunctionClass.Switch, StressKind.Voltage);
        Assert.Equal(0.9, guideline!.Factor);
        Assert.Contains("set by this lab; default 0.75", guideline.Source, StringComparison.Ordinal);
    }

    [Fact]
    public void Guideline_DataSheetAlone_IsTheWholeRating() =>
        Assert.Equal(1, new LineTable(DeratingPreset.DataSheet, new Dictionary<string, double>()).Guideline(FunctionClass.Switch, StressKind.Voltage).Guideline!.Factor);

    [Theory]
    [InlineData(150, 110)]
    [InlineData(125, 85)]
    public void JunctionLine_OfAPart_IsTheLowerOfTwo(double rated, double line) => Assert.Equal(line, LineTable.Default.JunctionLine(FunctionClass.Switch, rated)!.Value.DegC);

    [Theory]
    [InlineData("switch_voltage", 0.9, true)]
    [InlineData("switch_voltage", 1.1, false)]
    [InlineData("ample_headroom", 0.5, false)]
    [InlineData("ample_headroom", double.NaN, false)]
    [InlineData("no_such_line", 1, false)]
    public void Refuse_Line_OnlyWhatCanBe(string code, double value, bool may) => Assert.Equal(may, LineTable.Refuse(code, value) is null);

    [Fact]
    public void Rows_Codes_AreUniqueAndCarryTheirSource()
    {
        Assert.Equal(LineTable.Default.Rows.Count, LineTable.Default.Rows.Select(row => row.Code).Distinct().Count());
        Assert.All(LineTable.Default.Rows, row => Assert.NotEmpty(row.Source));
    }
}
