using System.Globalization;
using Catalogue.Domain.Text;
using Catalogue.Domain.UsbPd;
using CsCheck;

namespace Catalogue.Domain.Tests.UsbPd;

public sealed class CapabilityWordTests
{
    private static readonly Gen<PeakCurrent> GenPeak = Gen.Int[0, 3].Select(code => (PeakCurrent)code);

    public static TheoryData<string[]> WorkedExamples => UsbPdDocument.Rows("## Worked examples");

    [Fact]
    public void WorkedExamples_OfTheDocument_AreTwentySixOfEveryKind()
    {
        Assert.Equal(26, WorkedExamples.Count);
        Assert.Equal(
            SnakeCase.All<SupplyKind>().Where(kind => kind != "unreadable").Order(StringComparer.Ordinal),
            WorkedExamples.Select(row => row.Data[2]).Distinct().Order(StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(WorkedExamples))]
    public void Decode_WorkedExample_GivesTheDocumentedNumbers(string[] row)
    {
        var capability = CapabilityWord.Decode(Convert.ToUInt32(row[0], 16), int.Parse(row[1], CultureInfo.InvariantCulture));

        Assert.Equal(row[2], SnakeCase.Code(capability.Kind));
        Assert.Equal((row[3], row[4]), capability.Window is var (lowest, highest) ? (Number(lowest), Number(highest)) : ("-", "-"));
        Assert.Equal(row[5], capability switch
        {
            Capability.SprAvs x => $"{Number(x.CurrentTo15VMa)}/{Number(x.CurrentTo20VMa)}",
            Capability.EprAvs => "-",
            _ => Number(capability.HighestCurrentMa),
        });
        Assert.Equal(row[6], capability switch { Capability.Fixed x => Number(x.PowerMw), Capability.Battery x => Number(x.MaxPowerMw), Capability.EprAvs x => Number(x.PdpW * 1000), _ => "-" });
        Assert.Equal(row[7], capability switch { Capability.Fixed x => Number((int)x.Peak), Capability.SprAvs x => Number((int)x.Peak), Capability.EprAvs x => Number((int)x.Peak), _ => "-" });
        Assert.Equal(row[8], capability switch
        {
            Capability.Fixed x => string.Join(' ', Enum.GetValues<SourceFlags>().Where(flag => flag != 0 && x.Flags.HasFlag(flag)).OrderDescending().Select(SnakeCase.Code)),
            Capability.SprPps { IsPowerLimited: true } => "pps_power_limited",
            _ => "",
        });
    }

    [Theory]
    [MemberData(nameof(WorkedExamples))]
    public void Encode_WorkedExample_GivesTheWord(string[] row) =>
        Assert.Equal(row[0], CapabilityWord.Text(Encoded(CapabilityWord.Decode(Convert.ToUInt32(row[0], 16), int.Parse(row[1], CultureInfo.InvariantCulture)))));

    [Fact]
    public void Encode_OfWhatWasDecoded_IsTheWord_WhereItIsWellFormed() => Gen.Select(Gen.UInt, Gen.Int[1, 13]).Sample(
        (any, position) =>
        {
            var word = any & ~CapabilityWord.ReservedBits(any, position);
            if (CapabilityWord.ReservedBits(word, position) != 0)
                return; // Clearing the bits made it a word of 5 V, whose flags count.
            Assert.Equal(word, Encoded(CapabilityWord.Decode(word, position)));
        },
        iter: 100_000);

    [Fact]
    public void Decode_AnyWord_GivesTheKindOfItsTypeBits() => Gen.UInt.Sample(word =>
    {
        var expected = word == 0 ? SupplyKind.Padding : (word >> 28) switch
        {
            <= 0b0011 => SupplyKind.Fixed,
            <= 0b0111 => SupplyKind.Battery,
            <= 0b1011 => SupplyKind.Variable,
            0b1100 => SupplyKind.SprPps,
            0b1101 => SupplyKind.EprAvs,
            0b1110 => SupplyKind.SprAvs,
            _ => SupplyKind.ReservedApdo,
        };
        Assert.Equal(expected, CapabilityWord.Decode(word, 2).Kind);
    });

    [Fact]
    public void Encode_Fixed_ComesBack() => Gen.Select(Gen.Int[1, 1023], Gen.Int[0, 1023], GenPeak, Gen.Int[0, 127]).Sample(
        (voltage, current, peak, flags) => ComesBack(new Capability.Fixed(voltage * 50, current * 10, peak, (SourceFlags)(flags << 23)), 1));

    [Fact]
    public void Encode_Battery_ComesBack() => Gen.Select(Gen.Int[0, 1023], Gen.Int[0, 1023], Gen.Int[0, 1023]).Sample(
        (lowest, highest, power) => ComesBack(new Capability.Battery(lowest * 50, highest * 50, power * 250), 2));

    [Fact]
    public void Encode_Variable_ComesBack() => Gen.Select(Gen.Int[0, 1023], Gen.Int[0, 1023], Gen.Int[0, 1023]).Sample(
        (lowest, highest, current) => ComesBack(new Capability.Variable(lowest * 50, highest * 50, current * 10), 3));

    [Fact]
    public void Encode_SprPps_ComesBack() => Gen.Select(Gen.Int[0, 255], Gen.Int[0, 255], Gen.Int[0, 127], Gen.Bool).Sample(
        (lowest, highest, current, isLimited) => ComesBack(new Capability.SprPps(lowest * 100, highest * 100, current * 50, isLimited), 4));

    [Fact]
    public void Encode_SprAvs_ComesBack() => Gen.Select(Gen.Int[0, 1023], Gen.Int[0, 1023], GenPeak).Sample(
        (to15, to20, peak) => ComesBack(new Capability.SprAvs(to15 * 10, to20 * 10, peak), 5));

    [Fact]
    public void Encode_EprAvs_ComesBack() => Gen.Select(Gen.Int[0, 255], Gen.Int[0, 511], Gen.Int[0, 255], GenPeak).Sample(
        (lowest, highest, power, peak) => ComesBack(new Capability.EprAvs(lowest * 100, highest * 100, power, peak), 9));

    [Fact]
    public void Encode_ReservedAndPadding_ComeBack()
    {
        Gen.UInt.Sample(word => ComesBack(new Capability.ReservedApdo(word | 0xF000_0000), 3));
        ComesBack(new Capability.Padding(), 6);
    }

    public static TheoryData<Capability, string> DoNotFit => new()
    {
        { new Capability.Fixed(5025, 3000), "voltage" },
        { new Capability.Fixed(51_200, 3000), "voltage" },
        { new Capability.Fixed(-50, 3000), "voltage" },
        { new Capability.Fixed(5000, 3005), "current" },
        { new Capability.Fixed(5000, 10_240), "current" },
        { new Capability.Fixed(0, 0), "padding" },
        { new Capability.Fixed(5000, 3000, (PeakCurrent)4), "peak" },
        { new Capability.Fixed(5000, 3000, PeakCurrent.None, (SourceFlags)1), "flags" },
        { new Capability.Battery(9000, 12_600, 27_100), "power" },
        { new Capability.Battery(int.MinValue, 12_600, 27_000), "lowest voltage" },
        { new Capability.Variable(9600, int.MaxValue, 1500), "highest voltage" },
        { new Capability.SprPps(3350, 11_000, 3000), "lowest voltage" },
        { new Capability.SprPps(3300, 25_600, 3000), "highest voltage" },
        { new Capability.SprPps(3300, 11_000, 2770), "current" },
        { new Capability.SprAvs(3000, 2255), "current to 20 V" },
        { new Capability.EprAvs(15_000, 51_200, 140), "highest voltage" },
        { new Capability.EprAvs(15_000, 28_000, 256), "power" },
        { new Capability.ReservedApdo(0xE000_0000), "reserved" },
        { new Capability.Unreadable("0x12", "too short"), "damaged" },
    };

    [Theory]
    [MemberData(nameof(DoNotFit))]
    public void Encode_WhatDoesNotFit_IsRefusedAndNamed(Capability capability, string named) =>
        Assert.Contains(named, Assert.IsType<WordEncoding.Refused>(CapabilityWord.Encode(capability)).Reason, StringComparison.OrdinalIgnoreCase);

    [Theory]
    [InlineData(0x0802D12C, 2, SourceFlags.None)]               // 9 V: the bit is reserved there
    [InlineData(0x0802D12C, 1, SourceFlags.UnconstrainedPower)] // a first object says what it says, 5 V or not
    [InlineData(0x0801912C, 2, SourceFlags.UnconstrainedPower)] // a 5 V object, in the middle of a list
    public void Decode_Flags_AreThoseOfTheFirstObjectAndOfFiveVolts(uint word, int position, SourceFlags flags) =>
        Assert.Equal(flags, Assert.IsType<Capability.Fixed>(CapabilityWord.Decode(word, position)).Flags);

    [Theory]
    [InlineData(0x0041912C, 1, 0x0040_0000)]
    [InlineData(0x0802D12C, 2, 0x0800_0000)]
    [InlineData(0x0801912C, 1, 0)]
    [InlineData(0xC6DD21BC, 2, 0x0601_0080)]
    [InlineData(0xD231968C, 9, 0x0001_0000)]
    [InlineData(0xE3F4B1F4, 5, 0x03F0_0000)]
    [InlineData(0xFFFFFFFF, 5, 0)]
    [InlineData(0x7FFFFFFF, 5, 0)]
    [InlineData(0xBFFFFFFF, 5, 0)]
    public void ReservedBits_ThatAreSet_AreNamed(uint word, int position, uint bits) => Assert.Equal(bits, CapabilityWord.ReservedBits(word, position));

    [Fact]
    public void Decode_ReservedBits_ChangeNoNumber() => Gen.Select(Gen.UInt, Gen.Int[2, 11]).Sample((word, position) =>
    {
        var clean = word & ~CapabilityWord.ReservedBits(word, position);
        if (clean != 0)
            Assert.Equal(CapabilityWord.Decode(clean, position), CapabilityWord.Decode(word, position));
    });

    [Theory]
    [InlineData(140, 15, 5)]
    [InlineData(140, 28, 5)]
    [InlineData(160, 32, 5)]
    [InlineData(160, 33.6, 4.7619)]
    [InlineData(160, 36, 4.44444)]
    [InlineData(240, 48, 5)]
    [InlineData(200, 44, 4.54545)]
    [InlineData(200, 48, 4.16667)]
    public void CurrentMa_OfEprAvs_IsFiveAmperesOrThePower(int watts, double volts, double amperes) =>
        Assert.Equal(amperes, new Capability.EprAvs(15_000, 48_000, watts).CurrentMa(volts * 1000) / 1000, 1e-5 * amperes);

    [Theory]
    [InlineData(14_999)]
    [InlineData(28_001)]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void CurrentMa_OutsideTheRange_IsNone(double mv) => Assert.Equal(0, new Capability.EprAvs(15_000, 28_000, 140).CurrentMa(mv));

    [Fact]
    public void Decode_PositionBelowOne_IsABug() => Assert.Throws<ArgumentOutOfRangeException>(() => CapabilityWord.Decode(1, 0));

    private static void ComesBack(Capability capability, int position) => Assert.Equal(capability, CapabilityWord.Decode(Encoded(capability), position));

    private static uint Encoded(Capability capability) => Assert.IsType<WordEncoding.Encoded>(CapabilityWord.Encode(capability)).Word;

    private static string Number(int? value) => value?.ToString(CultureInfo.InvariantCulture) ?? "-";
}
