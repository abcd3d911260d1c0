using System.Globalization;
using Catalogue.Domain.Components;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Tests.Samples;
using CsCheck;

namespace Catalogue.Domain.Tests.Components;

public sealed class ComponentValueTests
{
    public static TheoryData<string[]> Values => [.. SampleFile.TabLines("Text", "values.tsv")];

    [Fact]
    public void Samples_AreFortyTwo() => Assert.Equal(42, Values.Count);

    [Theory]
    [MemberData(nameof(Values))]
    public void Read_WrittenValue_GivesValueUnitAndExtras(string[] row)
    {
        var value = ComponentValue.Read(row[0], PartKindOf.Designator(row[1]));

        if (row[2] == "")
            Assert.True(value.Value is null);
        else
            Assert.Equal((double.Parse(row[2], CultureInfo.InvariantCulture), row[3]), (value.Value!.Value.Value!.Value, value.Value.Value.Unit.Code()));
        var wanted = row[4].Split("; ", StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(wanted.Length, value.Extras.Count);
        foreach (var (want, extra) in wanted.Order(StringComparer.Ordinal).Zip(value.Extras.OrderBy(extra => extra.Name, StringComparer.Ordinal)))
        {
            var (name, text) = (want[..want.IndexOf('=', StringComparison.Ordinal)], want[(want.IndexOf('=', StringComparison.Ordinal) + 1)..]);
            Assert.Equal(name, extra.Name);
            if (extra.Quantity is not { } quantity)
            {
                Assert.Equal(text, extra.Text);
                continue;
            }

            var parts = text.Split(" at ");
            Assert.Equal(Assert.Single(Assert.IsType<QuantityReading.Read>(QuantityParser.Read(parts[0])).Quantities).Quantity, quantity);
            Assert.Equal(parts.ElementAtOrDefault(1), extra.Condition);
        }
    }

    [Theory]
    [InlineData("104", "C1")]
    [InlineData("10M", "C1")]
    [InlineData("1.000k", "R1")]
    [InlineData("103", "R1")]
    [InlineData("220", "L1")]
    public void Read_AmbiguousValue_IsAskedAndNotTaken(string text, string designator)
    {
        var value = ComponentValue.Read(text, PartKindOf.Designator(designator));

        Assert.Null(value.Value);
        Assert.True(value.Alternatives.Count >= 2);
        Assert.NotEmpty(value.Warnings);
    }

    [Theory]
    [InlineData("22", "R1", 22)]
    [InlineData("39", "R1", 39)]
    [InlineData("470", "R9", 470)]
    [InlineData("287 C_0805", "R7", 287)]
    [InlineData("120 (n.b.)", "R5", 120)]
    [InlineData("0,005", "R3", 0.005)]
    public void Read_BareResistance_IsTakenFromTheDesignatorAndRemarked(string text, string designator, double ohms)
    {
        var value = ComponentValue.Read(text, PartKindOf.Designator(designator));

        Assert.Equal(ohms, value.Value!.Value.Value);
        Assert.Contains(value.Warnings, warning => warning.Contains("no unit", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("2,2µ", "C4", "decimal comma")]
    [InlineData("22UF 10%", "C9", "upper-case U")]
    [InlineData("470PF", "C10", "upper-case P")]
    [InlineData("1m", "R7", "ask when the part is not a shunt")]
    [InlineData("3.3µH 5.2A 9.5mΩ", "L1", "which current is meant")]
    [InlineData("-60V/-12A 45mΩ@10V", "Q2", "signs kept")]
    [InlineData("150R 4x0603", "RN1", "array")]
    [InlineData("NF/120p", "C5", "was not read")]
    public void Read_WhatAPersonShouldSee_IsRemarked(string text, string designator, string remark) =>
        Assert.Contains(ComponentValue.Read(text, PartKindOf.Designator(designator)).Warnings, warning => warning.Contains(remark, StringComparison.Ordinal));

    [Theory]
    [InlineData("CAP CER 1.5UF 16V X5R 0603", "C4", 1.5e-6, "voltage 16 V;dielectric X5R;package 0603")]
    [InlineData("0.47µF ±10% 25V Ceramic Capacitor X7R 0603 (1608 Metric)", "C37", 4.7e-7, "tol 10%;voltage 25 V;dielectric X7R;package 0603")]
    [InlineData("RES 0.15 OHM ±1% 1W 1206", "R1", 0.15, "tol 1%;power 1 W;package 1206")]
    [InlineData("620 Ohm 5% 1/8W", "R5", 620, "tol 5%;power 125 mW")]
    [InlineData("Cap Aluminum 1500uF 35V 20% Radial – 2750mA", "C20", 1.5e-3, "tol 20%;voltage 35 V;current 2.75 A")]
    public void Read_ValueOnlyInTheDescription_IsTakenAndSaid(string description, string designator, double si, string extras)
    {
        var value = ComponentValue.Read("BRW06-155K", PartKindOf.Designator(designator), description);

        Assert.Equal(si, value.Value!.Value.Value);
        Assert.True(value.IsFromDescription);
        Assert.Contains("value taken from the description", value.Warnings);
        Assert.Equal(extras, string.Join(';', value.Extras.Select(extra => $"{extra.Name} {extra.Text}")));
    }

    [Fact]
    public void Read_RatingsOfTheDescription_JoinTheValueOfTheCell()
    {
        var value = ComponentValue.Read("1.5nF", PartKind.Capacitor, "63V, C0G");

        Assert.Equal(1.5e-9, value.Value!.Value.Value);
        Assert.False(value.IsFromDescription);
        Assert.Equal(["voltage 63 V", "dielectric C0G"], value.Extras.Select(extra => $"{extra.Name} {extra.Text}"));
    }

    [Theory]
    [InlineData("MAR1", "TP1")]
    [InlineData("1E5", "U2")]
    [InlineData("PushButton", "BTN0")]
    [InlineData("", "R1")]
    [InlineData(null, "R1")]
    public void Read_TextThatIsNoValue_StaysText(string? text, string designator) => Assert.Null(ComponentValue.Read(text, PartKindOf.Designator(designator)).Value);

    [Fact]
    public void Read_AnyText_NeverThrows() =>
        Gen.Select(Gen.String, Gen.String, Gen.Int[0, 10]).Sample((text, description, kind) => _ = ComponentValue.Read(text, (PartKind)kind, description));

    [Theory]
    [InlineData("R12", PartKind.Resistor)]
    [InlineData("RV1", PartKind.Varistor)]
    [InlineData("RT1", PartKind.Thermistor)]
    [InlineData("C7A", PartKind.Capacitor)]
    [InlineData("FAN1", PartKind.NotSaid)]
    [InlineData("R", PartKind.NotSaid)]
    public void PartKindOf_Designator_DecidesOnlyWhereLettersAreCertain(string designator, PartKind kind) => Assert.Equal(kind, PartKindOf.Designator(designator));

    [Fact]
    public void PartKindOf_Class_FollowsTheParent()
    {
        Assert.Equal(PartKind.Fuse, PartKindOf.Class(FunctionClass.BladeFuse));
        Assert.Equal(PartKind.Capacitor, PartKindOf.Class(FunctionClass.SafetyCapacitor));
        Assert.Equal(PartKind.NotSaid, PartKindOf.Class(FunctionClass.Connector));
    }
}
