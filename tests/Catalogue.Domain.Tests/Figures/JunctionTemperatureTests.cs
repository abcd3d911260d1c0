using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Tests.Figures;

public sealed class JunctionTemperatureTests
{
    public static IEnumerable<TheoryDataRow<IReadOnlyDictionary<string, string>>> Examples => WorkedExamples.Of("junction-temperature.md");

    [Theory]
    [MemberData(nameof(Examples))]
    public void Compute_WorkedExample_GivesTheDocumentedNumbers(IReadOnlyDictionary<string, string> row)
    {
        var result = Assert.IsType<FigureResult.Computed>(JunctionTemperature.Compute(Inputs(row, null), LineTable.Default));
        WorkedExamples.Near(row.Number("T_j"), result.Value.Nominal);
        Assert.Equal((Unit.DegreeCelsius, Verdict.NoLine, true), (result.Unit, result.Verdict, result.StaticOnly));
    }

    public static IEnumerable<TheoryDataRow<IReadOnlyDictionary<string, string>>> SelfHeatedExamples => WorkedExamples.Of("junction-temperature.md", "Loss that grows with temperature");

    [Theory]
    [MemberData(nameof(SelfHeatedExamples))]
    public void Compute_CoefficientGiven_LossAndTemperatureFollowEachOther(IReadOnlyDictionary<string, string> row)
    {
        var result = Assert.IsType<FigureResult.Computed>(JunctionTemperature.Compute(Inputs(row, null), LineTable.Default));
        WorkedExamples.Near(row.Number("T_j"), result.Value.Nominal);
        WorkedExamples.Near(row.Number("P_j"), result.Working.Steps.Single(step => step.Symbol == "P_j").Nominal);
    }

    [Fact]
    public void Compute_LossGrowsFasterThanItIsCarriedOff_IsUnknownAndSaysSo()
    {
        var row = new Dictionary<string, string> { ["R_on"] = "0.1", ["I"] = "10", ["R_th"] = "40", ["T_a"] = "50", ["a"] = "0.006" };
        var unknown = Assert.IsType<FigureResult.Unknown>(JunctionTemperature.Compute(Inputs(row, null), LineTable.Default));
        Assert.Equal("stable_temperature", Assert.Single(unknown.Missing).Code);
    }

    [Theory]
    [InlineData(150, Verdict.Adequate)]
    [InlineData(70, Verdict.OverRating)]
    public void Compute_HighestTemperatureKnown_IsHeldAgainstIt(double highest, Verdict verdict)
    {
        var row = WorkedExamples.Of("junction-temperature.md").First().Data;
        var result = Assert.IsType<FigureResult.Computed>(JunctionTemperature.Compute(Inputs(row, new Given(Interval.Exactly(highest), Evidence.Datasheet, null)), LineTable.Default));
        Assert.Equal(verdict, result.Verdict);
        Assert.Equal((highest, false), (result.Working.Marks!.Rating, result.Working.Marks.MoreIsBetter));
    }

    private static JunctionTemperature.Inputs Inputs(IReadOnlyDictionary<string, string> row, Given? highest) => new(
        new ConductionLoss.Inputs
        {
            OnResistance = row.Given("R_on"),
            TemperatureFactor = row.Given("k_T"),
            ParallelCount = row.Count("n"),
            Sharing = new Given(Interval.Exactly(1), Evidence.Inferred, null),
            Current = row.Given("I"),
        },
        FunctionClass.Switch,
        row.Given("a"),
        row.Given("R_th"),
        row.Given("T_a"),
        highest);
}
