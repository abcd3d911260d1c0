using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Tests.Quantities;

public sealed class QuantityTests
{
    [Fact]
    public void Between_OutOfOrderOrNotFinite_CannotBe()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Quantity.Between(2, 1, 3, Unit.Volt));
        Assert.Throws<ArgumentOutOfRangeException>(() => Quantity.Exactly(double.NaN, Unit.Volt));
        Assert.Throws<ArgumentOutOfRangeException>(() => Quantity.Range(5, double.PositiveInfinity, Unit.Volt));
        Assert.Throws<ArgumentOutOfRangeException>(() => Quantity.AtMost(double.NegativeInfinity, Unit.Volt));
    }

    [Fact]
    public void Range_HasNoValue_AndNoInterval()
    {
        var range = Quantity.Range(100, 240, Unit.Volt);

        Assert.Equal((100.0, null, 240.0), (range.Low, range.Value, range.High));
        Assert.Null(range.ToInterval());
        Assert.Equal(Interval.Create(9, 10, 11), Quantity.Between(9, 10, 11, Unit.Volt).ToInterval());
    }

    [Fact]
    public void AtMost_SaysNothingOfTheOtherEnd() => Assert.Null(Quantity.AtMost(0.1, Unit.Watt).Low);

    [Fact]
    public void Count_IsOneUnlessSaid()
    {
        Assert.Equal(1, Quantity.Exactly(15, Unit.Ampere).Count);
        Assert.Equal(2, (Quantity.Exactly(15, Unit.Ampere) with { Count = 2 }).Count);
    }
}
