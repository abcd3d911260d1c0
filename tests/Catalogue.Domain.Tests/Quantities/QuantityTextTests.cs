using Catalogue.Domain.Quantities;
using CsCheck;

namespace Catalogue.Domain.Tests.Quantities;

public sealed class QuantityTextTests
{
    private static readonly Unit[] Units = Enum.GetValues<Unit>();

    // Every magnitude a double has, and the round decimals that people write.
    private static readonly Gen<double> GenValue = Gen.OneOf(
        Gen.Select(Gen.Double[1, 10], Gen.Int[-300, 300], (mantissa, power) => mantissa * Math.Pow(10, power)),
        Gen.Select(Gen.Int[1, 999_999], Gen.Int[-18, 12], (digits, power) => double.Parse($"{digits}e{power}", System.Globalization.CultureInfo.InvariantCulture)),
        Gen.Const(0.0));

    [Fact]
    public void Exact_AnyValueInEveryUnit_ReadsBackToTheSameDouble() =>
        Gen.Select(GenValue, Gen.Int[0, Units.Length - 1], Gen.Bool).Sample((value, index, isNegative) =>
        {
            var unit = Units[index];
            var signed = isNegative && unit is Unit.Volt or Unit.Ampere or Unit.Watt or Unit.WattHour or Unit.AmpereHour or Unit.Ratio or Unit.PerDegreeCelsius ? -value : value;
            Assert.Equal(signed, Back(QuantityText.Exact(signed, unit)).Value);
        }, iter: 20_000);

    [Theory]
    [InlineData(3599, "3.599\u00A0ks")]
    [InlineData(3600, "1\u00A0h")]
    [InlineData(7.2e6, "2000\u00A0h")]
    [InlineData(85.9, "85.9\u00A0s")]
    public void Of_Time_IsInHoursFromAnHourOn(double seconds, string text) => Assert.Equal(text, QuantityText.Of(seconds, Unit.Second));

    [Theory]
    [InlineData("2000 h", 7.2e6)]
    [InlineData("2000h", 7.2e6)]
    [InlineData("1.5 hours", 5400)]
    [InlineData("90", 90)]
    [InlineData("90 s", 90)]
    public void ReadOne_FieldOfTimes_TakesHoursToo(string text, double seconds) =>
        Assert.Equal((seconds, Unit.Second), Assert.IsType<QuantityReading.Read>(QuantityParser.ReadOne(text, Unit.Second)) is { Quantities: [{ Quantity: var read }] } ? (read.Value!.Value, read.Unit) : default);

    [Theory]
    [InlineData("5 A h", Unit.Second)]
    [InlineData("h", Unit.Second)]
    [InlineData("2,000 h", Unit.Second)]
    [InlineData("1e308 h", Unit.Second)]
    [InlineData("2000 h", Unit.Volt)]
    [InlineData("2000 h", null)]
    public void ReadOne_HoursThatAreNone_AreRefused(string text, Unit? field) => Assert.IsType<QuantityReading.Refused>(QuantityParser.ReadOne(text, field));

    [Fact]
    public void Exact_AnyQuantity_ReadsBackToAnEqualOne() =>
        Gen.Select(GenValue.Array[3], Gen.Int[0, Units.Length - 1], Gen.Int[0, 4], Gen.Int[1, 12], Gen.Int[0, 2]).Sample((values, index, form, count, current) =>
        {
            Array.Sort(values);
            var unit = Units[index];
            var quantity = form switch
            {
                0 => Quantity.Exactly(values[1], unit),
                1 => Quantity.Between(values[0], values[1], values[2], unit),
                2 => Quantity.Range(values[0], values[2], unit),
                3 => Quantity.AtMost(values[2], unit),
                _ => Quantity.AtLeast(values[0], unit),
            };
            // A length is never counted, ac and dc are of volt, ampere and watt, and a bound counts nothing.
            quantity = quantity with
            {
                Count = unit is Unit.Metre || form > 2 ? 1 : count,
                Current = unit is Unit.Volt or Unit.Ampere or Unit.Watt ? (CurrentKind)current : CurrentKind.NotSaid,
            };
            Assert.Equal(quantity, Back(QuantityText.Exact(quantity)));
        }, iter: 20_000);

    [Theory]
    [InlineData(4700, Unit.Ohm, "4.7 kΩ")]
    [InlineData(0.0029, Unit.Ohm, "2.9 mΩ")]
    [InlineData(1e-7, Unit.Farad, "100 nF")]
    [InlineData(3.125, Unit.Ampere, "3.1250 A")]
    [InlineData(512, Unit.WattHour, "512 Wh")]
    [InlineData(1024, Unit.WattHour, "1024 Wh")]
    [InlineData(-12.5, Unit.Volt, "−12.5 V")]
    [InlineData(0.83, Unit.Ratio, "83 %")]
    [InlineData(0, Unit.Ohm, "0 Ω")]
    [InlineData(-40, Unit.DegreeCelsius, "−40 °C")]
    [InlineData(1e20, Unit.Hertz, "100000000000 GHz")]
    [InlineData(1.5e-20, Unit.Farad, "1.5e−8 pF")]
    public void Exact_Example_IsInEngineeringForm(double value, Unit unit, string print) => Assert.Equal(print, QuantityText.Exact(value, unit).Replace('\u00A0', ' '));

    [Fact]
    public void Exact_NotANumber_CannotBePrinted() => Assert.Throws<ArgumentOutOfRangeException>(() => QuantityText.Exact(double.NaN, Unit.Volt));

    private static Quantity Back(string print)
    {
        var read = QuantityParser.Read(print);
        return Assert.Single(read is QuantityReading.Read { Unread: [], Quantities: var found } ? found : throw new Xunit.Sdk.XunitException($"“{print}” came back as {read}")).Quantity;
    }
}
