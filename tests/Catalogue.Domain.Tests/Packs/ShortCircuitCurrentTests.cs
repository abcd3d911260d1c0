using Catalogue.Domain.Packs;
using Catalogue.Domain.Quantities;
using static Catalogue.Domain.Tests.Quantities.Reckoned;

namespace Catalogue.Domain.Tests.Packs;

public sealed class ShortCircuitCurrentTests
{
    private static readonly (double, double)[] Ranges = [(10, 60), (0.0005, 0.05), (0, 0.01)];

    [Fact]
    public void Estimate_SixteenIronPhosphateCells_IsByHand() =>
        // 58.4 V / (16 / 1 × 0.5 mΩ + 2 mΩ) = 58.4 / 0.010 = 5840 A.
        Near(5840, Done(ShortCircuitCurrent.Estimate(16, 1, Exactly(58.4), Exactly(0.0005), Exactly(0.002))).Nominal);

    [Fact]
    public void Estimate_WiringNotKnown_IsRefused_AndZeroIsNot()
    {
        Assert.Equal(["wiring_resistance"], Refused(ShortCircuitCurrent.Estimate(4, 2, Exactly(16.8), Exactly(0.02), null)));
        Near(420, Done(ShortCircuitCurrent.Estimate(4, 2, Exactly(16.8), Exactly(0.02), Exactly(0))).Nominal);
    }

    [Fact]
    public void Estimate_SpreadInputs_HoldsEveryCase() => HoldsEveryCase(Sum, Ranges);

    [Fact]
    public void Estimate_MoreResistance_NeverMoreCurrent()
    {
        Moves(Sum, 1, -1, Ranges);
        Moves(Sum, 2, -1, Ranges);
    }

    [Fact]
    public void Estimate_AbsurdInputs_AreRefused() =>
        RefusesTheAbsurd(given => ShortCircuitCurrent.Estimate(4, 2, given[0], given[1], given[2]), 16.8, 0.02, 0.005);

    private static Reckoning<Interval> Sum(Interval[] given) => ShortCircuitCurrent.Estimate(16, 2, given[0], given[1], given[2]);
}
