using System.Globalization;
using Catalogue.Domain.Quantities;
using CsCheck;

namespace Catalogue.Domain.Tests.Quantities;

public sealed class QuantityParserTests
{
    private static readonly (string Prefix, int Power)[] Prefixes = [("p", -12), ("n", -9), ("µ", -6), ("m", -3), ("", 0), ("k", 3), ("M", 6), ("G", 9)];

    public static TheoryData<string[]> WorkedExamples => DocumentTable.Rows("quantities.md", "## Worked examples");

    public static TheoryData<string[]> RefusedExamples => DocumentTable.Rows("quantities.md", "## What is asked and what is refused");

    [Fact]
    public void WorkedExamples_OfTheDocument_AreThere()
    {
        Assert.True(WorkedExamples.Count >= 40);
        Assert.True(RefusedExamples.Count >= 15);
    }

    [Theory]
    [MemberData(nameof(WorkedExamples))]
    public void Read_WorkedExample_GivesTheDocumentedQuantities(string[] row)
    {
        var read = Assert.IsType<QuantityReading.Read>(QuantityParser.Read(row[0], Kind(row[1])));

        Assert.Equal(row[2].Split("; "), read.Quantities.Select(found => Plain(found.Quantity)));
        Assert.Equal(row[3], string.Join("; ", read.Unread));
    }

    [Theory]
    [MemberData(nameof(RefusedExamples))]
    public void Read_AmbiguousOrImpossible_AsksOrSaysWhy(string[] row)
    {
        switch (QuantityParser.Read(row[0], Kind(row[1])))
        {
            case QuantityReading.Ambiguous ambiguous:
                Assert.Equal(row[2], string.Join(" or ", ambiguous.Alternatives.Select(alternative => alternative.Text.Replace('\u00A0', ' '))));
                break;
            case QuantityReading.Refused refused:
                Assert.Equal("refused", row[2]);
                Assert.True(refused.Reason.Length > 20, refused.Reason);
                break;
            case var other:
                Assert.Fail($"“{row[0]}” was read: {other}");
                break;
        }
    }

    [Theory]
    [InlineData("1M", 1e6)]
    [InlineData("1m", 1e-3)]
    [InlineData("10M", 1e7)]
    [InlineData("4m7", 4.7e-3)]
    [InlineData("4M7", 4.7e6)]
    public void Read_MilliAndMegaOfAResistor_AreAsWritten(string text, double ohms) => Assert.Equal(ohms, Only(text, PartKind.Resistor).Value);

    [Theory]
    [InlineData("2 mV", "2 MV", false)]
    [InlineData("2 mΩ", "2 MΩ", true)]
    [InlineData("2 mHz", "2 MHz", true)]
    [InlineData("2 mW", "2 MW", true)]
    [InlineData("2 mAh", "2 MAh", false)]
    [InlineData("2 mF", "2 MF", false)]
    [InlineData("2 mH", "2 MH", false)]
    public void Read_LargeM_IsMegaOrAsked_NeverMilli(string small, string large, bool isSure)
    {
        Assert.Equal(2e-3, Only(small).Value);
        if (isSure)
            Assert.Equal(2e6, Only(large).Value);
        else
            Assert.Equal([2e-3, 2e6], Assert.IsType<QuantityReading.Ambiguous>(QuantityParser.Read(large)).Alternatives.Select(alternative => alternative.Quantities[0].Quantity.Value!.Value));
    }

    [Fact]
    public void Read_EveryPrefixOnEveryElectricUnit_ScalesByItsPower()
    {
        foreach (var unit in new[] { Unit.Volt, Unit.Ampere, Unit.Watt, Unit.WattHour, Unit.AmpereHour, Unit.Ohm, Unit.Hertz })
            foreach (var (prefix, power) in Prefixes.Where(entry => entry.Prefix != "M" || unit is Unit.Watt or Unit.WattHour or Unit.Ohm or Unit.Hertz))
                Assert.Equal(double.Parse($"4.7e{power}", CultureInfo.InvariantCulture), Only($"4.7 {prefix}{unit.Sign()}").Value);
    }

    [Fact]
    public void Read_SameQuantityInAnotherPrefix_IsTheSameDouble() =>
        Gen.Select(Gen.Int[1, 999_999], Gen.Int[0, 6], Gen.Int[0, 6]).Sample((digits, from, to) =>
        {
            // The same decimal number with the point moved by the difference of the two prefixes.
            var shift = Prefixes[from].Power - Prefixes[to].Power;
            var one = Read($"{digits} {Prefixes[from].Prefix}Ω");
            var other = Read($"{digits}e{shift} {Prefixes[to].Prefix}Ω");
            Assert.Equal(one, other);

            static double Read(string text) => Only(text).Value!.Value;
        });

    [Fact]
    public void Read_AnyTolerance_KeepsLowValueHighInOrder() =>
        Gen.Select(Gen.Int[1, 99_999], Gen.Int[0, 7], Gen.Int[0, 300]).Sample((digits, prefix, tenths) =>
        {
            var quantity = Only($"{digits} {Prefixes[prefix].Prefix}Ω ± {(tenths / 10m).ToString(CultureInfo.InvariantCulture)} %");
            Assert.True(quantity.Low <= quantity.Value && quantity.Value <= quantity.High);
            Assert.InRange(quantity.High!.Value - quantity.Value!.Value, 0, quantity.Value.Value * tenths / 999);
        });

    [Fact]
    public void Read_AnyText_NeverThrows_AndEveryNumberIsFinite()
    {
        var pieces = OneOf("4k7", "1.000", "100-240V~", "±", "5V⎓3A", "Ω", "m", "M", "1e400", "NaN", "T3.15AL250V", "104K", "[", "]", "…", "22R", "brown", "black", "red", "½", "㎌", " ", "/", "x", "-", "+80/-20%", "≤", "AC", "1E5", "\uD800", "\0", "９", "'", ",", "0603", "=");
        Gen.Select(Gen.OneOf(pieces, Gen.String).Array[0, 12], Gen.Int[0, 10]).Sample((parts, kind) =>
        {
            var text = string.Concat(parts);
            foreach (var quantity in Quantities(QuantityParser.Read(text, (PartKind)kind)))
            {
                Assert.True(double.IsFinite(quantity.Value ?? 0) && double.IsFinite(quantity.Low ?? 0) && double.IsFinite(quantity.High ?? 0), text);
                Assert.False(quantity.Value is { } value && (quantity.Low > value || quantity.High < value), text);
            }

            _ = QuantityParser.ReadOne(text, Unit.Volt);
            _ = QuantityParser.TryRead(text, new FoundQuantity[4], out _, (PartKind)kind);
        }, iter: 5000);
    }

    [Fact]
    public void Read_AnyText_EveryPieceIsWhereItSays() =>
        OneOf("47uF/63V X7R", "  4k7 1% 0805", "㎌ 47㎌ ±5%", "AC100-240V 50/60Hz", "2 × 15 A foo", "10kΩ [9 kΩ … 11 kΩ]", "X2 275V~ 0.47uF").Sample(text =>
        {
            var read = Assert.IsType<QuantityReading.Read>(QuantityParser.Read(text));
            foreach (var found in read.Quantities)
                Assert.False(string.IsNullOrWhiteSpace(text.Substring(found.Start, found.Length)));
            foreach (var piece in read.Unread)
                Assert.Contains(piece, text, StringComparison.Ordinal);
        });

    [Fact]
    public void Read_TenMegabytes_IsRefusedAtOnce()
    {
        Assert.IsType<QuantityReading.Refused>(QuantityParser.Read(new string('9', 10_000_000)));
        Assert.False(QuantityParser.TryRead(new string('9', 10_000_000), new FoundQuantity[32], out _));
        Assert.IsType<QuantityReading.Refused>(QuantityParser.Read(string.Concat(Enumerable.Repeat("5V ", 100))));
    }

    [Fact]
    public void TryRead_PlainTexts_AllocatesNothing()
    {
        string[] texts = ["4k7", "47uF/63V", "2.9mΩ", "2x15A", "5V⎓3A", "100-240V~ 50/60Hz 1.5A", "10kΩ±1%", "20 000 mAh", "3.7V 10000mAh 37Wh", "-20…60 °C"];
        var found = new FoundQuantity[32];
        foreach (var text in texts)
            Assert.True(QuantityParser.TryRead(text, found, out _), text);

        foreach (var text in texts)
        {
            var before = GC.GetAllocatedBytesForCurrentThread();
            for (var i = 0; i < 100; i++)
                QuantityParser.TryRead(text, found, out _);
            Assert.Equal((text, 0L), (text, GC.GetAllocatedBytesForCurrentThread() - before));
        }
    }

    [Theory]
    [InlineData("35", 35)]
    [InlineData("500 mA", 0.5)]
    [InlineData("35 A ± 10 %", 35)]
    public void ReadOne_WithoutUnit_TakesTheOneOfTheField(string text, double ampere)
    {
        var read = Assert.IsType<QuantityReading.Read>(QuantityParser.ReadOne(text, Unit.Ampere));

        Assert.Equal(ampere, Assert.Single(read.Quantities).Quantity.Value);
    }

    [Theory]
    [InlineData("5V 3A")]
    [InlineData("5-20 V")]
    [InlineData("2x15A")]
    [InlineData("35 A gL")]
    [InlineData("")]
    [InlineData("abc")]
    public void ReadOne_NotOneValue_SaysSo(string text) => Assert.IsType<QuantityReading.Refused>(QuantityParser.ReadOne(text, Unit.Ampere));

    [Theory]
    [InlineData("104", PartKind.Capacitor, 1e-7)]
    [InlineData("22R", PartKind.Resistor, 22)]
    [InlineData("221", PartKind.Resistor, 220)]
    public void Read_SurerCode_IsPreferredAndTheOtherShown(string text, PartKind kind, double value)
    {
        var read = Assert.IsType<QuantityReading.Read>(QuantityParser.Read(text, kind));

        Assert.Equal(value, read.Quantities[0].Quantity.Value);
        Assert.Equal(2, read.Alternatives.Count);
        Assert.Equal(read.Quantities[0].Quantity, read.Alternatives[0].Quantities[0].Quantity);
    }

    private static Gen<string> OneOf(params string[] texts) => Gen.Int[0, texts.Length - 1].Select(index => texts[index]);

    private static PartKind Kind(string word) => word == "" ? PartKind.NotSaid : PartKinds.Find(word)!.Value;

    private static Quantity Only(string text, PartKind kind = PartKind.NotSaid) => Assert.Single(Assert.IsType<QuantityReading.Read>(QuantityParser.Read(text, kind)).Quantities).Quantity;

    private static IEnumerable<Quantity> Quantities(QuantityReading reading) => reading switch
    {
        QuantityReading.Read read => read.Quantities.Select(found => found.Quantity),
        QuantityReading.Ambiguous ambiguous => ambiguous.Alternatives.SelectMany(alternative => alternative.Quantities).Select(found => found.Quantity),
        _ => [],
    };

    private static string Plain(Quantity quantity) => QuantityText.Exact(quantity).Replace('\u00A0', ' ');
}
