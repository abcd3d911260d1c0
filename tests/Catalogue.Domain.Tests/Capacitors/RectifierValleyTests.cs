using Catalogue.Domain.Capacitors;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Tests.Samples;
using static Catalogue.Domain.Tests.Quantities.Reckoned;

namespace Catalogue.Domain.Tests.Capacitors;

public sealed class RectifierValleyTests
{
    private static readonly (double, double)[] Ranges = [(5, 120), (85, 264), (45, 65), (20e-6, 300e-6)];

    public static TheoryData<string[]> WorkedExamples => FigureDocument.Theory("bus-valley.md", "### At one line voltage");

    [Theory]
    [MemberData(nameof(WorkedExamples))]
    public void Of_WorkedExample_GivesTheDocumentedNumbers(string[] row)
    {
        var (power, capacitance) = (FigureDocument.Known(row[0]), FigureDocument.Known(row[3], 1e-6));
        var valley = Done(RectifierValley.Of(power, FigureDocument.Known(row[1]), FigureDocument.Known(row[2]), capacitance));
        Near(FigureDocument.Number(row[4]) * 1e-6, Done(BulkRule.PerWatt(capacitance, power)).Nominal);
        Near(FigureDocument.Number(row[5]), valley.Peak.Nominal);
        Near(FigureDocument.Number(row[6]), valley.Valley.Nominal);
        Near(FigureDocument.Number(row[7]), valley.Ripple.Nominal);
        Near(FigureDocument.Number(row[8]) * 1e-3, valley.DischargeTime.Nominal);
        Assert.False(valley.CollapsesAtWorst);
    }

    [Fact]
    public void Of_Solution_SatisfiesTheEquation()
    {
        var valley = Done(RectifierValley.Of(Exactly(65), Exactly(100), Exactly(50), Exactly(150e-6)));
        var (peak, low) = (valley.Peak.Nominal, valley.Valley.Nominal);
        var time = (0.5 + (Math.Asin(low / peak) / Math.PI)) / (2 * 50);

        Near(150e-6, 2 * 65 * time / ((peak * peak) - (low * low)), 1e-10);
    }

    [Fact]
    public void Of_SteppedThroughTime_IsTheSame()
    {
        // Constant power from one peak on, until the rectified mains meets the capacitor again.
        const double step = 1e-7;
        var (peak, joules, time) = (Math.Sqrt(2) * 115, 0.5 * 82e-6 * 2 * 115 * 115, 0.0);
        double volts;
        do
        {
            time += step;
            volts = Math.Sqrt(2 * (joules - (40 * time)) / 82e-6);
        }
        while (time < 0.25 / 60 || volts > peak * Math.Abs(Math.Cos(2 * Math.PI * 60 * time)));

        Near(volts, Done(RectifierValley.Of(Exactly(40), Exactly(115), Exactly(60), Exactly(82e-6))).Valley.Nominal, 1e-4);
    }

    [Fact]
    public void Of_CapacitorThatCannotHold_IsRefused() =>
        Assert.Equal(["capacitance"], Refused(RectifierValley.Of(Exactly(100), Exactly(90), Exactly(50), Exactly(10e-6))));

    [Fact]
    public void Of_CapacitorThatCannotHoldAtWorst_SaysSo()
    {
        var valley = Done(RectifierValley.Of(Interval.Create(20, 60, 150), Exactly(90), Exactly(50), Exactly(68e-6)));

        Assert.True(valley.CollapsesAtWorst);
        Assert.Equal((0, valley.Peak.High), (valley.Valley.Low, valley.Ripple.High));
        Assert.True(valley.Valley.Nominal > 0);
    }

    [Fact]
    public void Of_SpreadInputs_HoldsEveryCase()
    {
        HoldsEveryCase(given => Pick(given, valley => valley.Valley), Ranges);
        HoldsEveryCase(given => Pick(given, valley => valley.Ripple), Ranges);
        HoldsEveryCase(given => Pick(given, valley => valley.DischargeTime), Ranges);
    }

    [Fact]
    public void Of_MoreStress_NeverAHigherValley()
    {
        Moves(given => Pick(given, valley => valley.Valley), 0, -1, Ranges);
        Moves(given => Pick(given, valley => valley.Valley), 1, 1, Ranges);
        Moves(given => Pick(given, valley => valley.Valley), 2, 1, Ranges);
        Moves(given => Pick(given, valley => valley.Valley), 3, 1, Ranges);
    }

    [Fact]
    public void Of_PowerAndCapacitanceScaledAlike_SameValley() => Scales(given => Pick(given, valley => valley.Ripple), [1, 0, 0, 1], 0, Ranges);

    [Fact]
    public void Of_AbsurdInputs_AreRefused() => RefusesTheAbsurd(given => RectifierValley.Of(given[0], given[1], given[2], given[3]), 24, 90, 60, 47e-6);

    // In half of the cases the load is not held; those are no results.
    private static Reckoning<Interval> Pick(Interval[] given, Func<RectifierValley, Interval> pick) =>
        RectifierValley.Of(given[0], given[1], given[2], given[3]).Then<Interval>(valley =>
            valley.CollapsesAtWorst ? new Reckoning<Interval>.Refused("capacitance", "collapses") : new Reckoning<Interval>.Done(pick(valley)));
}
