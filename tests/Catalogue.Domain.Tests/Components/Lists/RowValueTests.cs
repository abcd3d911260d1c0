using Catalogue.Domain.Components;
using Catalogue.Domain.Components.Lists;

namespace Catalogue.Domain.Tests.Components.Lists;

public sealed class RowValueTests
{
    [Theory]
    [InlineData("C4", "47uF/63V", null, RatingKind.Capacitance, 47e-6, RatingKind.RatedVoltage, 63)]
    [InlineData("C9", "100n X2 275VAC", null, RatingKind.Capacitance, 100e-9, RatingKind.RatedVoltageAc, 275)]
    [InlineData("R7", "0R005 1% 2W", null, RatingKind.Resistance, 0.005, RatingKind.RatedPower, 2)]
    [InlineData("F1", "T3.15A 250V", null, RatingKind.RatedCurrent, 3.15, RatingKind.RatedVoltage, 250)]
    [InlineData("Q2", "60V 12A", null, RatingKind.RatedVoltage, 60, RatingKind.RatedCurrent, 12)]
    [InlineData("D3", "QVS-34", "Schottky 40V 3A", RatingKind.RatedVoltage, 40, RatingKind.RatedCurrent, 3)]
    [InlineData("L1", "33uH 1.2A", null, RatingKind.Inductance, 33e-6, RatingKind.RatedCurrent, 1.2)]
    public void Of_AValueWithARatingBesideIt_StatesBoth(string designator, string value, string? description, RatingKind first, double firstValue, RatingKind second, double secondValue)
    {
        var ratings = RowValue.Of(Row(designator, value, description)).Ratings;

        Assert.Equal([first, second], ratings.Select(rating => rating.Kind));
        Assert.Equal(firstValue, ratings[0].Value.Nominal, firstValue * 1e-9);
        Assert.Equal(secondValue, ratings[1].Value.Nominal, secondValue * 1e-9);
    }

    [Fact]
    public void Of_ATolerance_GoesIntoLowAndHigh()
    {
        var value = Assert.Single(RowValue.Of(Row("R1", "10k 5%", null)).Ratings).Value;

        Assert.Equal((9500, 10000, 10500), (Math.Round(value.Low), value.Nominal, Math.Round(value.High)));
    }

    [Theory]
    [InlineData("C3", "104", "may be 100 nF or 104 pF: asked")]
    [InlineData("RV1", "68V", "the voltage of a varistor is no rating")]
    [InlineData("D5", "6.2V 0.5W", "the voltage of a zener is no rating, its power is")]
    [InlineData("Q4", "-30V -4A", "negative values are for a person to enter")]
    [InlineData("U1", "5V 3A", "of a chip nothing is read")]
    [InlineData("R5", "see note", "no quantity")]
    [InlineData("C8", "", "nothing stands there")]
    public void Of_WhatIsNoRatingOrMustBeAsked_StatesNoValue(string designator, string value, string why)
    {
        var ratings = RowValue.Of(Row(designator, value, null)).Ratings;

        Assert.True(ratings.All(rating => rating.Kind is RatingKind.RatedPower), why);
    }

    [Fact]
    public void Of_ACoilCurrentThatMayBeTwoThings_SaysSoInItsCondition()
    {
        var ratings = RowValue.Of(Row("L2", "10uH 5A 12mohm", null)).Ratings;

        var current = Assert.Single(ratings, rating => rating.Kind is RatingKind.RatedCurrent);
        Assert.Contains("saturation or rms", current.Condition, StringComparison.Ordinal);
        Assert.DoesNotContain(ratings, rating => rating.Kind is RatingKind.Resistance);
    }

    internal static ListRow Row(string designators, string? value, string? description)
    {
        var text = $"Ref;Value;Description\n{designators};{value};{description ?? "x"}\n";
        return Assert.IsType<ComponentListReading.Read>(ComponentList.Read(System.Text.Encoding.UTF8.GetBytes(text), null)).Rows[0];
    }
}
