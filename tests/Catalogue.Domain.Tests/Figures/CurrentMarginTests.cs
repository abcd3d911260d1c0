using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Rails;

namespace Catalogue.Domain.Tests.Figures;

public sealed class CurrentMarginTests
{
    public static IEnumerable<TheoryDataRow<IReadOnlyDictionary<string, string>>> Examples => WorkedExamples.Of("current-margin.md");

    [Theory]
    [MemberData(nameof(Examples))]
    public void Compute_WorkedExample_GivesTheDocumentedNumbers(IReadOnlyDictionary<string, string> row)
    {
        var functionClass = Enum.GetValues<FunctionClass>().Single(one => one.Word() == row["class"]);
        var result = Assert.IsType<FigureResult.Computed>(CurrentMargin.Compute(
            new CurrentMargin.Inputs
            {
                FunctionClass = functionClass,
                RatedCurrent = row.Given("I_rated"),
                ParallelCount = row.Count("n"),
                Sharing = row.Given("k_share"),
                Position = row.TryGetValue("position", out var position) ? Enum.GetValues<CircuitPosition>().Single(one => one.Word() == position) : CircuitPosition.InLine,
                IsMean = functionClass is FunctionClass.Rectifier,
                Current = row.Given("I"),
                DutyCycle = row.Given("D"),
                HasRail = true,
                IsMains = position == CircuitPosition.Bridge.Word(),
                MaxCurrent = row.Given("I_max"),
                MaxPower = row.Given("P"),
                Efficiency = row.Given("η"),
                MinVoltage = row.Given("V_min"),
            },
            LineTable.Default));
        WorkedExamples.Near(row.Number("margin"), result.Value.Nominal);
        var through = result.Working.Steps.Where(step => step.Symbol is "I_rms" or "I_needed").Select(step => step.Nominal).Concat(result.Working.Inputs.Where(input => input.Symbol is "I_rms" or "I_mean" or "I_needed").Select(input => input.Nominal));
        WorkedExamples.Near(row.Number("through"), functionClass is FunctionClass.Switch && position == "push-pull primary" ? result.Working.Steps.Single(step => step.Symbol == "I_rms").Nominal : through.First());
        Assert.True(result.StaticOnly);
    }

    [Fact]
    public void Compute_SwitchWithoutPositionOrCurrent_NamesTheCurrent()
    {
        var figure = Bench.Unknown(Bench.Part(FunctionClass.Switch, Bench.Rail(max: 20), [Bench.Rating(RatingKind.RatedCurrent, 20)]), CurrentMargin.Rule);
        Assert.Equal("rms_current", Assert.Single(figure.Missing).Code);
    }

    [Theory]
    [InlineData(RailKind.DcBus)]
    [InlineData(RailKind.Pack)]
    public void Compute_BridgeSwitchOnDcRail_DoesNotTakeTheRailsMeanCurrent(RailKind kind)
    {
        // 600 W from a bus of 340 V are 1.76 A of mean current; at 230 V each switch carries 600/230/√2 = 1.84 A rms, not 1.76/√2 = 1.25 A.
        var rail = Bench.Rail(min: 340, kind: kind);
        rail.Known.AddRange([Bench.Quantity(rail.Rail, RailQuantityKind.MaxPower, 600), Bench.Quantity(rail.Rail, RailQuantityKind.Efficiency, 1)]);
        var figure = Bench.Unknown(Bench.Part(FunctionClass.Switch, rail, [Bench.Rating(RatingKind.RatedCurrent, 20)], CircuitPosition.Bridge), CurrentMargin.Rule);
        Assert.Equal("rms_current", Assert.Single(figure.Missing).Code);
    }

    [Fact]
    public void Compute_ConnectorWithoutAnything_NamesAllThatIsMissing()
    {
        var figure = Bench.Unknown(Bench.Part(FunctionClass.Connector, Bench.Rail(), []), CurrentMargin.Rule);
        Assert.Equal(["rated_current", "max_power", "min_voltage", "efficiency"], figure.Missing.Select(missing => missing.Code));
    }
}
