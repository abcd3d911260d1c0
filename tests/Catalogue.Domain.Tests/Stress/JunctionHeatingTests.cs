using Catalogue.Domain.Quantities;
using Catalogue.Domain.Stress;
using Catalogue.Domain.Tests.Samples;
using static Catalogue.Domain.Tests.Quantities.Reckoned;

namespace Catalogue.Domain.Tests.Stress;

public sealed class JunctionHeatingTests
{
    private static readonly (double, double)[] Ranges = [(0, 30), (0.001, 0.02), (0, 0.012), (-40, 80), (1, 60)];

    public static TheoryData<string[]> WorkedExamples => FigureDocument.Theory("switch-loss.md", "### Loss that grows with temperature");

    [Theory]
    [MemberData(nameof(WorkedExamples))]
    public void SelfConsistent_WorkedExample_GivesTheDocumentedNumbers(string[] row)
    {
        var stable = Assert.IsType<JunctionHeating.Balance.Stable>(Done(JunctionHeating.SelfConsistent(
            FigureDocument.Known(row[2]),
            FigureDocument.Known(row[0], 1e-3),
            FigureDocument.Known(row[5]),
            FigureDocument.Count(row[1]),
            null,
            FigureDocument.Known(row[4]),
            FigureDocument.Known(row[3]))));
        Near(FigureDocument.Number(row[6]), stable.TemperatureFactor.Nominal);
        Near(FigureDocument.Number(row[7]), stable.Loss.Nominal);
        Near(FigureDocument.Number(row[8]), stable.Junction.Nominal);
    }

    [Fact]
    public void SelfConsistent_Stable_IsTheFixedPointOfTheIteration()
    {
        var stable = Assert.IsType<JunctionHeating.Balance.Stable>(Done(JunctionHeating.SelfConsistent(Exactly(12), Exactly(0.008), Exactly(0.007), 1, null, Exactly(45), Exactly(35))));
        var junction = 45.0;
        for (var i = 0; i < 500; i++)
            junction = 45 + (12 * 12 * 0.008 * (1 + (0.007 * (junction - 25))) * 35);

        Near(junction, stable.Junction.Nominal, 1e-9);
    }

    [Fact]
    public void SelfConsistent_LoopGainOfOne_IsRunaway()
    {
        // 10² × 10 mΩ × 100 °C/W = 100 °C, times 0.01 per °C = 1.
        var runaway = Assert.IsType<JunctionHeating.Balance.Runaway>(Done(JunctionHeating.SelfConsistent(Exactly(10), Exactly(0.01), Exactly(0.01), 1, null, Exactly(25), Exactly(100))));

        Near(1, runaway.LoopGain.Nominal);
        Assert.True(runaway.AtNominal);
    }

    [Fact]
    public void SelfConsistent_RunawayInTheWorstCaseOnly_IsSaid()
    {
        var runaway = Assert.IsType<JunctionHeating.Balance.Runaway>(Done(JunctionHeating.SelfConsistent(Interval.Create(5, 8, 11), Exactly(0.01), Exactly(0.01), 1, null, Exactly(25), Exactly(100))));

        Assert.False(runaway.AtNominal);
    }

    [Fact]
    public void SelfConsistent_SpreadInputs_HoldsEveryCase()
    {
        HoldsEveryCase(given => Pick(given, stable => stable.Junction), Ranges);
        HoldsEveryCase(given => Pick(given, stable => stable.TemperatureFactor), Ranges);
        HoldsEveryCase(given => Pick(given, stable => stable.Loss), Ranges);
    }

    [Fact]
    public void SelfConsistent_MoreStress_NeverCooler()
    {
        Moves(given => Pick(given, stable => stable.Junction), 0, 1, Ranges);
        Moves(given => Pick(given, stable => stable.Junction), 1, 1, Ranges);
        Moves(given => Pick(given, stable => stable.Junction), 4, 1, Ranges);
    }

    [Fact]
    public void SelfConsistent_SlopeTooSteepForTheCold_IsRefused() => Assert.Equal(
        ["temperature_coefficient"], Refused(JunctionHeating.SelfConsistent(Exactly(1), Exactly(0.01), Exactly(0.02), 1, null, Exactly(-40), Exactly(10))));

    [Fact]
    public void Sums_AbsurdInputs_AreRefused()
    {
        RefusesTheAbsurd(given => JunctionHeating.At(given[0], given[1], given[2]), 50, 2, 20);
        RefusesTheAbsurd(given => JunctionHeating.SelfConsistent(given[0], given[1], given[2], 1, null, given[3], given[4]), 5, 0.01, 0.005, 40, 20);
    }

    private static Reckoning<Interval> Pick(Interval[] given, Func<JunctionHeating.Balance.Stable, Interval> pick) =>
        JunctionHeating.SelfConsistent(given[0], given[1], given[2], 1, null, given[3], given[4]).Then<Interval>(balance =>
            balance is JunctionHeating.Balance.Stable stable ? new Reckoning<Interval>.Done(pick(stable)) : new Reckoning<Interval>.Refused("current_rms", "runaway"));
}
