using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;

namespace Catalogue.Domain.Tests.Figures;

public sealed class ConductionLossTests
{
    public static IEnumerable<TheoryDataRow<IReadOnlyDictionary<string, string>>> Examples => WorkedExamples.Of("conduction-loss.md");

    [Theory]
    [MemberData(nameof(Examples))]
    public void Compute_WorkedExample_GivesTheDocumentedNumbers(IReadOnlyDictionary<string, string> row)
    {
        var result = Assert.IsType<FigureResult.Computed>(ConductionLoss.Compute(new ConductionLoss.Inputs
        {
            IsRectifier = row["class"] == "rectifier",
            IsMean = row["class"] == "rectifier",
            Position = row["bridge"] == "yes" ? CircuitPosition.MainsBridge : CircuitPosition.Boost,
            OnResistance = row.Given("R_on"),
            TemperatureFactor = row.Given("k_T"),
            ParallelCount = row.Count("n"),
            Sharing = row.Given("k_share"),
            Current = row.Given("I"),
            ForwardVoltage = row.Given("V_f"),
        }));
        WorkedExamples.Near(row.Number("P"), result.Value.Nominal);
        Assert.Equal(row.ContainsKey("P_each"), result.Working.Steps.Any(step => step.Symbol == "P_each"));
        if (row.ContainsKey("P_each"))
            WorkedExamples.Near(row.Number("P_each"), result.Working.Steps.Single(step => step.Symbol == "P_each").Nominal);
        Assert.Equal(Verdict.NoLine, result.Verdict);
    }

    [Fact]
    public void Compute_ParallelSwitchesWithoutSharing_AreUnknown()
    {
        var figure = Bench.Unknown(
            Bench.Part(FunctionClass.Switch, Bench.Rail(max: 20), [Bench.Rating(RatingKind.OnResistance, 0.0025), Bench.Rating(RatingKind.TemperatureFactor, 1.6), Bench.Rating(RatingKind.RmsCurrent, 80)], parallel: 4),
            ConductionLoss.Rule);
        Assert.Equal("current_sharing", Assert.Single(figure.Missing).Code);
    }
}
