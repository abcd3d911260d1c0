using Catalogue.Domain.Capacitors;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Tests.Samples;
using static Catalogue.Domain.Tests.Quantities.Reckoned;

namespace Catalogue.Domain.Tests.Capacitors;

public sealed class LineRippleTests
{
    private static readonly (double, double)[] Ranges = [(10, 3000), (45, 65), (1e-5, 3e-3), (150, 420)];

    public static TheoryData<string[]> WorkedExamples => FigureDocument.Theory("capacitors.md", "### Bus ripple");

    [Theory]
    [MemberData(nameof(WorkedExamples))]
    public void Of_WorkedExample_GivesTheDocumentedNumbers(string[] row)
    {
        var (power, capacitance) = (FigureDocument.Known(row[0]), FigureDocument.Known(row[3], 1e-6));
        var ripple = Done(LineRipple.Of(power, FigureDocument.Known(row[1]), capacitance, FigureDocument.Known(row[2])));
        Near(FigureDocument.Number(row[4]) * 1e-6, Done(BulkRule.PerWatt(capacitance, power)).Nominal);
        Near(FigureDocument.Number(row[5]), ripple.PeakToPeak.Nominal);
        Near(FigureDocument.Number(row[6]), ripple.ShareOfBus.Nominal);
        Near(FigureDocument.Number(row[7]), ripple.RmsCurrent.Nominal);
    }

    [Fact]
    public void Of_SpreadInputs_HoldsEveryCase()
    {
        HoldsEveryCase(given => Pick(given, ripple => ripple.PeakToPeak), Ranges);
        HoldsEveryCase(given => Pick(given, ripple => ripple.ShareOfBus), Ranges);
        HoldsEveryCase(given => Pick(given, ripple => ripple.RmsCurrent), Ranges);
    }

    [Fact]
    public void Of_MorePowerOrLessCapacitance_NeverLessRipple()
    {
        Moves(given => Pick(given, ripple => ripple.PeakToPeak), 0, 1, Ranges);
        Moves(given => Pick(given, ripple => ripple.PeakToPeak), 2, -1, Ranges);
    }

    [Fact]
    public void Of_PowerAndCapacitanceScaledAlike_SameRipple() => Scales(given => Pick(given, ripple => ripple.PeakToPeak), [1, 0, 1, 0], 0, Ranges);

    [Fact]
    public void Of_AbsurdInputs_AreRefused() => RefusesTheAbsurd(given => LineRipple.Of(given[0], given[1], given[2], given[3]), 100, 50, 68e-6, 400);

    private static Reckoning<Interval> Pick(Interval[] given, Func<LineRipple, Interval> pick) =>
        LineRipple.Of(given[0], given[1], given[2], given[3]).Then(ripple => new Reckoning<Interval>.Done(pick(ripple)));
}
