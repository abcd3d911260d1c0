using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;

namespace Catalogue.Domain.Tests.Figures;

public sealed class VoltageMarginTests
{
    public static IEnumerable<TheoryDataRow<IReadOnlyDictionary<string, string>>> Examples => WorkedExamples.Of("voltage-margin.md");

    [Theory]
    [MemberData(nameof(Examples))]
    public void Compute_WorkedExample_GivesTheDocumentedNumbers(IReadOnlyDictionary<string, string> row)
    {
        var functionClass = Enum.GetValues<FunctionClass>().Single(one => one.Word() == row["class"]);
        var position = Enum.GetValues<CircuitPosition>().Single(one => one.Word() == row["position"]);
        var result = Assert.IsType<FigureResult.Computed>(VoltageMargin.Compute(
            new VoltageMargin.Inputs
            {
                FunctionClass = functionClass,
                RatedVoltage = row.Given("V_rated"),
                SeriesCount = row.Count("m"),
                Stress = new VoltageStress
                {
                    Part = "part",
                    Position = position,
                    HasRail = true,
                    IsMains = position is CircuitPosition.MainsBridge or CircuitPosition.MainsHalfWave,
                    MaxVoltage = row.Given("V_max"),
                    PeakVoltage = row.Given("V_peak"),
                    RippleVoltage = row.Given("V_ripple"),
                    SpikeVoltage = row.Given("V_spike"),
                    OutputVoltage = row.Given("V_out"),
                    ForwardVoltage = row.Given("V_f"),
                    TurnsRatio = row.Given("N"),
                },
            },
            LineTable.Default));
        WorkedExamples.Near(row.Number("margin"), result.Value.Nominal);
        var stress = result.Working.Steps.FirstOrDefault(step => step.Symbol == "V_stress")?.Nominal ?? result.Working.Inputs.Single(input => input.Symbol == "V_peak").Nominal;
        WorkedExamples.Near(row.Number("V_stress"), stress);
    }

    [Fact]
    public void Compute_AcRatingOnADcRail_DoesNotCount()
    {
        var figure = Bench.Unknown(Bench.Part(FunctionClass.BladeFuse, Bench.Rail(max: 58), [Bench.Rating(RatingKind.RatedVoltage, 250, "250 V~")]), VoltageMargin.Rule);
        Assert.Equal("rated_voltage", Assert.Single(figure.Missing).Code);
    }

    [Fact]
    public void Compute_FuseOfABladeOnAHighPack_IsOverItsRating()
    {
        var figure = Bench.Computed(Bench.Part(FunctionClass.BladeFuse, Bench.Rail(max: 58.4), [Bench.Rating(RatingKind.RatedVoltage, 32)]), VoltageMargin.Rule);
        WorkedExamples.Near(1 - (58.4 / 32), figure.Value.Nominal);
        Assert.Equal(Verdict.OverRating, figure.Verdict);
    }

    [Fact]
    public void Compute_SafetyCapacitorOnMains_TakesItsAcRatingAgainstRms()
    {
        var mains = Bench.Rail(max: 264, mains: true);
        var figure = Bench.Computed(Bench.Part(FunctionClass.SafetyCapacitor, mains, [Bench.Rating(RatingKind.RatedVoltageAc, 275), Bench.Rating(RatingKind.RatedVoltage, 630)]), VoltageMargin.Rule);
        WorkedExamples.Near(1 - (264.0 / 275), figure.Value.Nominal);
        Assert.Equal("rated_voltage_ac", Assert.Single(Bench.Unknown(Bench.Part(FunctionClass.SafetyCapacitor, mains, [Bench.Rating(RatingKind.RatedVoltage, 630)]), VoltageMargin.Rule).Missing).Code);
    }

    [Fact]
    public void Compute_SwitchWithoutPosition_NamesIt()
    {
        var figure = Bench.Unknown(Bench.Part(FunctionClass.Switch, Bench.Rail(max: 400), [Bench.Rating(RatingKind.RatedVoltage, 650)]), VoltageMargin.Rule);
        Assert.Equal("circuit_position", Assert.Single(figure.Missing).Code);
    }

    [Fact]
    public void Compute_RingingNotMeasured_IsAtBestAdequateAndSaysStaticOnly()
    {
        var switched = Bench.Part(FunctionClass.Switch, Bench.Rail(max: 100), [Bench.Rating(RatingKind.RatedVoltage, 650)], CircuitPosition.Bridge);
        var figure = Bench.Computed(switched, VoltageMargin.Rule);
        Assert.Equal((Verdict.Adequate, true), (figure.Verdict, figure.StaticOnly));
        Assert.Contains(figure.Working.Notes, note => note.EndsWith(Sheet.StaticOnly, StringComparison.Ordinal));
        var measured = Bench.Part(FunctionClass.Switch, Bench.Rail(max: 100), [Bench.Rating(RatingKind.RatedVoltage, 650), Bench.Rating(RatingKind.PeakVoltage, 130)], CircuitPosition.Bridge);
        Assert.Equal(Verdict.Ample, Bench.Computed(measured, VoltageMargin.Rule).Verdict);
    }
}
