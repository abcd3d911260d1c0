using Catalogue.Domain.Capacitors;
using Catalogue.Domain.Quantities;
using static Catalogue.Domain.Tests.Quantities.Reckoned;

namespace Catalogue.Domain.Tests.Capacitors;

public sealed class BleedTests
{
    private static readonly (double, double)[] Ranges = [(1e4, 1e6), (1e-7, 1e-3), (10, 450), (5, 60)];

    [Fact]
    public void Time_StartingBelowTheTarget_IsZero() => Assert.Equal(Exactly(0), Done(Bleed.Time(Exactly(1e5), Exactly(1e-4), Exactly(48), Exactly(60))));

    [Fact]
    public void Time_SpreadInputs_HoldsEveryCase() => HoldsEveryCase(Time, Ranges);

    [Fact]
    public void Time_MoreCharge_NeverSooner()
    {
        Moves(Time, 0, 1, Ranges);
        Moves(Time, 1, 1, Ranges);
        Moves(Time, 2, 1, Ranges);
        Moves(Time, 3, -1, Ranges);
    }

    [Fact]
    public void Time_SteppedThroughTime_IsTheSame()
    {
        const double ohm = 220e3, farad = 470e-6, step = 1e-3;
        var (volts, seconds) = (400.0, 0.0);
        for (; volts > 60; seconds += step)
            volts -= volts / (ohm * farad) * step;

        Near(seconds, Done(Bleed.Time(Exactly(ohm), Exactly(farad), Exactly(400), Exactly(60))).Nominal, 1e-4);
    }

    [Fact]
    public void TimeConstant_LineCapacitor_IsByHand() => Near(0.47, Done(Bleed.TimeConstant(Exactly(1e6), Exactly(0.47e-6))).Nominal);

    [Fact]
    public void Sums_AbsurdInputs_AreRefused()
    {
        RefusesTheAbsurd(given => Bleed.Time(given[0], given[1], given[2], given[3]), 1e5, 1e-4, 400, 60);
        RefusesTheAbsurd(given => Bleed.Power(given[0], given[1]), 1e5, 400);
        RefusesTheAbsurd(given => Bleed.TimeConstant(given[0], given[1]), 1e5, 1e-6);
    }

    private static Reckoning<Interval> Time(Interval[] given) => Bleed.Time(given[0], given[1], given[2], given[3]);
}
