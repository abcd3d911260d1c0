using Catalogue.Domain.Capacitors;
using Catalogue.Domain.Quantities;
using CsCheck;
using static Catalogue.Domain.Tests.Quantities.Reckoned;

namespace Catalogue.Domain.Tests.Capacitors;

public sealed class EnergySourceLimitTests
{
    [Theory]
    [InlineData(0.1, 1000)]
    [InlineData(4, 1000)]
    [InlineData(6, 750)]
    [InlineData(8, 500)]
    [InlineData(10, 425)]
    [InlineData(91, 100)]
    [InlineData(235, 67.5)]
    [InlineData(300, 60)]
    [InlineData(1e6, 60)]
    public void For_RowsAndBetween_IsByHand(double nanofarad, double class1)
    {
        var limit = Done(EnergySourceLimit.For(Exactly(nanofarad * 1e-9)));

        Near(class1, limit.Class1);
        Near(2 * class1, limit.Class2);
    }

    [Fact]
    public void For_MoreCapacitance_NeverAHigherLimit() => Gen.Select(Gen.Double[1e-10, 5e-7], Gen.Double[1, 3]).Sample((farad, more) =>
        Done(EnergySourceLimit.For(Exactly(farad * more))).Class1 <= Done(EnergySourceLimit.For(Exactly(farad))).Class1);

    [Fact]
    public void For_Spread_TakesTheHighestCapacitance() =>
        Assert.Equal(Done(EnergySourceLimit.For(Exactly(91e-9))), Done(EnergySourceLimit.For(Interval.Create(8e-9, 41e-9, 91e-9))));

    [Fact]
    public void For_AbsurdInput_IsRefused() => RefusesTheAbsurd(given => EnergySourceLimit.For(given[0]), 1e-7);
}
