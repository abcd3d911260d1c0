using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Tests.Quantities;

public sealed class SpreadTests
{
    [Fact]
    public void Of_RisingAndFallingInputs_TakesTheEndsApart()
    {
        var (volts, ohms) = (Interval.Create(9, 10, 12), Interval.Create(2, 4, 5));

        Assert.Equal(Interval.Create(9.0 / 5, 2.5, 6), Spread.Of((up, down) => up(volts) / down(ohms)));
    }

    [Fact]
    public void Of_ResultThatIsNotFinite_Throws() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Spread.Of((up, down) => up(Interval.Exactly(1)) / down(Interval.Exactly(0))));

    [Fact]
    public void Then_AfterARefusal_KeepsIt()
    {
        var refused = new Reckoning<Interval>.Refused("rating", "rating is not known").Then(value => new Reckoning<double>.Done(value.Nominal));

        Assert.Equal(["rating"], Reckoned.Refused(refused));
    }
}
