using Catalogue.Domain.Quantities;
using Catalogue.Domain.Stress;
using Catalogue.Domain.Tests.Samples;
using static Catalogue.Domain.Tests.Quantities.Reckoned;

namespace Catalogue.Domain.Tests.Stress;

public sealed class SwitchLossTests
{
    private static readonly (double, double)[] Ranges = [(0.1, 100), (0.0005, 0.5), (1, 2.5), (0.3, 1)];

    public static TheoryData<string[]> WorkedExamples => FigureDocument.Theory("switch-loss.md", "### Conduction loss");

    [Theory]
    [MemberData(nameof(WorkedExamples))]
    public void Of_WorkedExample_GivesTheDocumentedNumbers(string[] row)
    {
        var loss = Done(SwitchLoss.Of(FigureDocument.Known(row[3]), FigureDocument.Known(row[0], 1e-3), FigureDocument.Known(row[2]), FigureDocument.Count(row[1])));
        Near(FigureDocument.Number(row[4]) * 1e-3, loss.EffectiveResistance.Nominal);
        Near(FigureDocument.Number(row[5]), loss.Total.Nominal);
        Near(FigureDocument.Number(row[6]), loss.Each.Nominal);
        Near(FigureDocument.Number(row[9]), Done(JunctionHeating.At(FigureDocument.Known(row[8]), loss.Hottest, FigureDocument.Known(row[7]))).Nominal);
        Assert.Equal(FigureDocument.Count(row[1]) > 1, loss.TakenAsEqual);
    }

    [Fact]
    public void Of_UnevenSharing_HeatsOnePartMore()
    {
        // 40 A over 4 parts at 0.8: 12.5 A in the worst, 12.5² × 10 mΩ = 1.5625 W against 1 W when alike.
        var loss = Done(SwitchLoss.Of(Exactly(40), Exactly(0.010), Exactly(1), 4, Exactly(0.8)));

        Near(1, loss.Each.Nominal);
        Near(1.5625, loss.Hottest.Nominal);
        Near(4, loss.Total.Nominal);
        Assert.False(loss.TakenAsEqual);
    }

    [Fact]
    public void Of_NoSharingAtAll_OnePartCarriesEverything() =>
        Near(16, Done(SwitchLoss.Of(Exactly(40), Exactly(0.010), Exactly(1), 4, Exactly(0.01))).Hottest.Nominal);

    [Fact]
    public void Of_SpreadInputs_HoldsEveryCase() => HoldsEveryCase(Hottest, Ranges);

    [Fact]
    public void Of_MoreStress_NeverLessLoss()
    {
        Moves(Hottest, 0, 1, Ranges);
        Moves(Hottest, 1, 1, Ranges);
        Moves(Hottest, 2, 1, Ranges);
        Moves(given => Hottest([given[0], given[1], given[2], Scaled(given[3], 0.5)]), 3, -1, Ranges);
    }

    [Fact]
    public void Of_CurrentInAnotherUnit_ScalesByItsSquare() => Scales(Hottest, [1, 0, 0, 0], 2, Ranges);

    [Fact]
    public void Of_AbsurdInputs_AreRefused()
    {
        RefusesTheAbsurd(given => SwitchLoss.Of(given[0], given[1], given[2], 2), 10, 0.005, 1.5);
        Assert.Equal(["parallel"], Refused(SwitchLoss.Of(Exactly(1), Exactly(1), Exactly(1), 0)));
        Assert.Equal(["current_sharing"], Refused(SwitchLoss.Of(Exactly(1), Exactly(1), Exactly(1), 2, Exactly(1.2))));
    }

    private static Reckoning<Interval> Hottest(Interval[] given) =>
        SwitchLoss.Of(given[0], given[1], given[2], 3, given[3]).Then(loss => new Reckoning<Interval>.Done(loss.Hottest));
}
