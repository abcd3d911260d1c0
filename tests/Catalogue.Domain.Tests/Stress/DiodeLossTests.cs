using Catalogue.Domain.Stress;
using static Catalogue.Domain.Tests.Quantities.Reckoned;

namespace Catalogue.Domain.Tests.Stress;

public sealed class DiodeLossTests
{
    [Fact]
    public void OfOne_WithAndWithoutResistance_IsByHand()
    {
        // 0.5 V × 3 A = 1.5 W; with 20 mΩ and 4 A rms 1.5 + 0.32 = 1.82 W.
        Near(1.5, Done(DiodeLoss.OfOne(Exactly(0.5), Exactly(3))).Nominal);
        Near(1.82, Done(DiodeLoss.OfOne(Exactly(0.5), Exactly(3), Exactly(0.02), Exactly(4))).Nominal);
    }

    [Fact]
    public void OfBridge_TwoDiodesInThePath_IsTwice() => Near(1.44, Done(DiodeLoss.OfBridge(Exactly(0.9), Exactly(0.8))).Nominal);

    [Fact]
    public void OfOne_ResistanceWithoutRms_IsRefused() =>
        Assert.Equal(["current_rms"], Refused(DiodeLoss.OfOne(Exactly(0.5), Exactly(3), Exactly(0.02))));

    [Fact]
    public void OfOne_RmsBelowAverage_IsRefused() =>
        Assert.Equal(["current_rms"], Refused(DiodeLoss.OfOne(Exactly(0.5), Exactly(3), Exactly(0.02), Exactly(2))));

    [Fact]
    public void OfOne_SpreadInputs_HoldsEveryCase() =>
        HoldsEveryCase(given => DiodeLoss.OfOne(given[0], given[1], given[2], given[3]), (0.3, 1.2), (0.1, 5), (0, 0.1), (5, 12));

    [Fact]
    public void Sums_AbsurdInputs_AreRefused()
    {
        RefusesTheAbsurd(given => DiodeLoss.OfOne(given[0], given[1]), 0.5, 3);
        RefusesTheAbsurd(given => DiodeLoss.OfBridge(given[0], given[1]), 0.9, 0.8);
    }
}
