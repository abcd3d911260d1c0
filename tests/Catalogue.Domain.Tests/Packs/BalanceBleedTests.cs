using Catalogue.Domain.Packs;
using Catalogue.Domain.Quantities;
using static Catalogue.Domain.Tests.Quantities.Reckoned;

namespace Catalogue.Domain.Tests.Packs;

public sealed class BalanceBleedTests
{
    [Fact]
    public void Of_TenOhmsAcrossAFullCell_IsByHand()
    {
        // 3.65 V / 10 Ω = 0.365 A; 3.65² / 10 = 1.33225 W.
        var bleed = Done(BalanceBleed.Of(Exactly(3.65), Exactly(10)));

        Near(0.365, bleed.Current.Nominal);
        Near(1.33225, bleed.Power.Nominal);
    }

    [Fact]
    public void Of_SpreadInputs_HoldsEveryCase() =>
        HoldsEveryCase(given => BalanceBleed.Of(given[0], given[1]).Then(bleed => new Reckoning<Interval>.Done(bleed.Power)), (2.5, 4.2), (5, 100));

    [Fact]
    public void Of_AbsurdInputs_AreRefused() => RefusesTheAbsurd(given => BalanceBleed.Of(given[0], given[1]), 4.2, 33);
}
