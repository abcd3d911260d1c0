using Catalogue.Domain.Components;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Stress;
using Catalogue.Domain.Tests.Samples;
using Catalogue.Domain.Text;
using static Catalogue.Domain.Tests.Quantities.Reckoned;

namespace Catalogue.Domain.Tests.Stress;

public sealed class BlockingVoltageTests
{
    private static readonly StressInput[] FlybackInputs = [StressInput.BusVoltage, StressInput.TurnsRatio, StressInput.OutputVoltage, StressInput.ForwardVoltage, StressInput.Overshoot];
    private static readonly (double, double)[] Ranges = [(100, 450), (1, 15), (5, 48), (0, 1.5), (0, 100)];

    public static TheoryData<string[]> WorkedExamples => FigureDocument.Theory("switch-loss.md", "### Voltage stress");

    public static TheoryData<CircuitPosition> Positions => [.. Enum.GetValues<CircuitPosition>()];

    [Theory]
    [MemberData(nameof(WorkedExamples))]
    public void Of_WorkedExample_GivesTheDocumentedNumbers(string[] row)
    {
        var given = row[1].Split(", ").Select(part => part.Split(" = ")).ToDictionary(pair => SnakeCase.TryParse<StressInput>(pair[0])!.Value, pair => FigureDocument.Known(pair[1])!.Value);
        var stress = Done(BlockingVoltage.Of(SnakeCase.TryParse<CircuitPosition>(row[0])!.Value, given));
        var use = Done(RatingUse.Of(stress.Volts, FigureDocument.Known(row[2]), Unit.Volt));
        Near(FigureDocument.Number(row[3]), stress.Volts.Nominal);
        Near(FigureDocument.Number(row[4]), use.Utilisation.Nominal);
        Near(FigureDocument.Number(row[5]), use.Margin.Nominal);
        Near(FigureDocument.Number(row[6]), use.SafetyFactor.Nominal);
    }

    [Theory]
    [MemberData(nameof(Positions))]
    public void Of_EveryPosition_NamesEachMissingInput_AndComputesWithAll(CircuitPosition position)
    {
        var needs = BlockingVoltage.Needs(position);
        var whole = needs.ToDictionary(need => need, _ => Exactly(10));

        Assert.NotEmpty(BlockingVoltage.Formula(position));
        Assert.True(Done(BlockingVoltage.Of(position, whole)).Volts.IsPositive);
        foreach (var need in needs.Where(need => need is not StressInput.ReflectedVoltage))
            Assert.Equal([SnakeCase.Code(need)], Refused(BlockingVoltage.Of(position, whole.Where(pair => pair.Key != need).ToDictionary())));
    }

    [Theory]
    [MemberData(nameof(Positions))]
    public void Of_OvershootNotGiven_IsSaidWhereItExists(CircuitPosition position)
    {
        var given = BlockingVoltage.Needs(position).ToDictionary(need => need, _ => Exactly(10));
        var isMains = position is CircuitPosition.MainsBridge or CircuitPosition.MainsHalfWave;

        Assert.Equal(!isMains, Done(BlockingVoltage.Of(position, given)).LeavesOvershootOut);
        given[StressInput.Overshoot] = Exactly(5);
        Assert.False(Done(BlockingVoltage.Of(position, given)).LeavesOvershootOut);
    }

    [Fact]
    public void Of_FlybackPrimaryWithoutReflectedVoltage_NamesWhatItIsMadeOf() => Assert.Equal(
        ["turns_ratio", "forward_voltage"],
        Refused(BlockingVoltage.Of(
            CircuitPosition.FlybackPrimary, new Dictionary<StressInput, Interval> { [StressInput.BusVoltage] = Exactly(373), [StressInput.OutputVoltage] = Exactly(20) })));

    [Fact]
    public void Of_FlybackPrimaryMadeOfTurns_IsByHand() =>
        // 373 + 6 × (20 + 0.5) + 60 = 556 V.
        Near(556, Done(Flyback([Exactly(373), Exactly(6), Exactly(20), Exactly(0.5), Exactly(60)])).Nominal);

    [Fact]
    public void Of_SpreadInputs_HoldsEveryCase()
    {
        HoldsEveryCase(Flyback, Ranges);
        HoldsEveryCase(Secondary, Ranges);
    }

    [Fact]
    public void Of_MoreStress_NeverLessVoltage()
    {
        for (var input = 0; input < Ranges.Length; input++)
            Moves(Flyback, input, 1, Ranges);
        Moves(Secondary, 1, -1, Ranges);
        Moves(given => Secondary(given).Then(stress => RatingUse.Of(stress, Exactly(600), Unit.Volt)).Then(use => new Reckoning<Interval>.Done(use.Margin)), 0, -1, Ranges);
    }

    [Fact]
    public void Of_VoltagesInAnotherUnit_ScaleTheStress() => Scales(Flyback, [1, 0, 1, 1, 1], 1, Ranges);

    [Fact]
    public void Sums_AbsurdInputs_AreRefused()
    {
        RefusesTheAbsurd(given => BlockingVoltage.MainsPeak(given[0]), 264);
        RefusesTheAbsurd(given => BlockingVoltage.Reflected(given[0], given[1], given[2]), 6, 20, 0.5);
        RefusesTheAbsurd(given => RatingUse.Of(given[0], given[1], Unit.Volt), 533, 650);
        Assert.Equal(["overshoot"], Refused(Flyback([Exactly(373), Exactly(6), Exactly(20), Exactly(0.5), Exactly(-60)])));
    }

    private static Reckoning<Interval> Flyback(Interval[] given) => Stress(CircuitPosition.FlybackPrimary, given);

    private static Reckoning<Interval> Secondary(Interval[] given) => Stress(CircuitPosition.FlybackSecondary, given);

    private static Reckoning<Interval> Stress(CircuitPosition position, Interval[] given) =>
        BlockingVoltage.Of(position, FlybackInputs.Zip(given).ToDictionary(pair => pair.First, pair => pair.Second)).Then(stress => new Reckoning<Interval>.Done(stress.Volts));
}
