using Catalogue.Domain.UsbPd;
using CsCheck;

namespace Catalogue.Domain.Tests.UsbPd;

public sealed class PowerRuleCheckTests
{
    private static readonly uint[] Sixty5 = [0x0801912C, 0x0002D12C, 0x0004B12C, 0x00064145];

    public static TheoryData<uint[], double, int, bool, bool, int[], AvsState> Sets => new()
    {
        { [0x0801912C, 0x0002D12C, 0xC0DC323C], 27, 27_000, false, false, [], AvsState.NotRequired },
        { [0x0801912C, 0x0002D12C, 0x0004B12C, 0xC140213C], 45, 45_000, false, false, [], AvsState.Missing },
        { [0x0801912C, 0x0002D12C, 0x0004B12C, 0xE004B000, 0xC140323C], 45, 45_000, false, false, [], AvsState.Present },
        { [.. Sixty5, 0xC1A42141], 65, 65_000, true, false, [], AvsState.Missing },
        { [0x0801912C, 0x0002D12C, 0x0003C12C, 0x00064145], 65, 65_000, true, false, [15_000], AvsState.Missing },
        { [0x0801912C, 0x0002D12C, 0x0004B12C, 0x000641F4, 0xE004B1F4, 0xC1A43264], 100, 100_000, true, false, [], AvsState.Present },
        { [0x0881912C, 0x0002D12C, 0x0004B12C, 0x000641F4, 0xE004B1F4, 0xC1A43264, 0, 0x0008C1F4, 0xD230968C], 140, 140_000, true, true, [], AvsState.Present },
        { Sixty5, 100, 65_000, true, false, [20_000], AvsState.Missing },
    };

    [Theory]
    [MemberData(nameof(Sets))]
    public void Of_List_SaysWhatFallsShort(uint[] words, double pdp, int bestMw, bool needs5A, bool needsEpr, int[] below, AvsState avs)
    {
        var list = CapabilityList.Of(words);
        var check = Check(list, pdp);

        Assert.Equal((bestMw, needs5A, needsEpr), (list.BestFixedPowerMw, list.NeedsFiveAmpereCable, list.NeedsEprCable));
        Assert.Equal(below, check.BelowRuleMv);
        Assert.Equal((below.Length == 0, avs), (check.SupportsDeclaredPower, check.SprAvs));
    }

    [Theory]
    [InlineData(2220, VoltageOutcome.Met)]
    [InlineData(2230, VoltageOutcome.Met)]
    [InlineData(2210, VoltageOutcome.TooLow)]
    [InlineData(2240, VoltageOutcome.TooHigh)]
    public void Of_Quotient_IsTakenRoundedEitherWay(int ma, VoltageOutcome expected) =>
        Assert.Equal(expected, Check(Of(new Capability.Fixed(5000, 3000), new Capability.Fixed(9000, ma)), 20).Voltages[1].Outcome);

    [Fact]
    public void Of_TwelveVolts_IsSaidToBeOutsideTheList()
    {
        var check = Check(CapabilityList.Of([0x0801912C, 0x0002D12C, 0x0003C0FA, 0x0004B0C8]), 30);

        Assert.Equal([new PowerRuleCheck.OutsideVoltage(3, 12_000, AboveClass: false)], check.Outside);
        Assert.Contains(check.Words, words => words.Contains("not in the R3.2 list", StringComparison.Ordinal));
        Assert.True(check.SupportsDeclaredPower);
    }

    [Fact]
    public void Of_VoltageOfAHigherPower_IsAboveTheClass() =>
        Assert.Equal([new PowerRuleCheck.OutsideVoltage(4, 20_000, AboveClass: true)], Check(CapabilityList.Of([0x0801912C, 0x0002D12C, 0x0004B12C, 0x000640E1]), 45).Outside);

    [Fact]
    public void Of_FurtherVoltageUpToNine_IsTheMakersChoice() =>
        Assert.Empty(Check(Of(new Capability.Fixed(5000, 3000), new Capability.Fixed(7000, 2000), new Capability.Fixed(9000, 2000)), 18).Outside);

    [Fact]
    public void Of_ExtendedSourceInStandardMode_MayOfferLessAtTwenty()
    {
        var check = Check(CapabilityList.Of([0x0881912C, 0x0002D12C, 0x0004B12C, 0x000641D6]), 140);

        Assert.Equal(VoltageOutcome.LessInStandardMode, check.Voltages.Single(voltage => voltage.Required.VoltageMv == 20_000).Outcome);
        Assert.Equal([28_000], check.BelowRuleMv);
        Assert.Contains(check.Words, words => words.Contains("read the extended list", StringComparison.Ordinal));
    }

    [Fact]
    public void Of_NothingAboveThreeAmperes_NamesTheCable() =>
        Assert.Contains(Check(CapabilityList.Of([0x0801912C, 0x0002D12C, 0x0004B12C, 0x0006412C]), 100).Words, words => words.Contains("cable", StringComparison.Ordinal));

    [Theory]
    [InlineData(0xE004B145, AvsState.Present)] // 3.25 A as the fixed 20 V beside it
    [InlineData(0xE004B12C, AvsState.Below)]   // 3 A
    [InlineData(0xE004B000, AvsState.Below)]   // stops at 15 V
    public void Of_AdjustableSupply_IsHeldAgainstTheFixedOnes(uint avs, AvsState expected) => Assert.Equal(expected, Check(CapabilityList.Of([.. Sixty5, avs]), 65).SprAvs);

    [Theory]
    [InlineData(0xD230968C, 140, AvsState.Present)]
    [InlineData(0xD230968C, 160, AvsState.Below)]
    [InlineData(0xD2309664, 140, AvsState.Below)]
    [InlineData(0xD230968C, 100, AvsState.NotRequired)]
    public void Of_ExtendedAdjustableSupply_IsHeldAgainstRangeAndPower(uint avs, double pdp, AvsState expected) =>
        Assert.Equal(expected, Check(CapabilityList.Of([0x0881912C, 0x0002D12C, 0x0004B12C, 0x000641F4, 0, 0, 0, 0x0008C1F4, avs]), pdp).EprAvs);

    [Theory]
    [InlineData(5900, PpsClass.FiveVolts)]
    [InlineData(6000, PpsClass.FiveVolts)]
    [InlineData(6100, PpsClass.Other)]
    [InlineData(11_000, PpsClass.NineVolts)]
    [InlineData(10_900, PpsClass.NineVolts)]
    [InlineData(16_000, PpsClass.FifteenVolts)]
    [InlineData(21_100, PpsClass.TwentyVolts)]
    [InlineData(21_200, PpsClass.Other)]
    public void ClassOf_Supply_GoesByItsHighestVoltage(int maxMv, PpsClass expected) => Assert.Equal(expected, PowerRuleCheck.ClassOf(new Capability.SprPps(3300, maxMv, 3000)));

    [Fact]
    public void Of_ProgrammableSupply_TellsItsFloorApart()
    {
        var pps = Assert.Single(Check(CapabilityList.Of([.. Sixty5, 0xC1A42137]), 65).Programmable);

        Assert.Equal((5, PpsClass.TwentyVolts, 3300, true, 3250, 2750), (pps.Position, pps.Class, pps.FloorMv, pps.HasOlderFloor, pps.WantedMa!.Value, pps.OfferedMa));
    }

    [Fact]
    public void Of_SinksList_IsABug() => Assert.Throws<ArgumentException>(() => Check(new CapabilityList([PlacedCapability.Of(1, 0x0801912C, WordOrigin.Word)], PortRole.Sink), 65));

    [Fact]
    public void Of_AnyList_NeverCertifiesAndNeverThrows() => Gen.Select(Gen.UInt.List[0, 13], Gen.Int[1, 480]).Sample((words, halfWatts) =>
    {
        var check = Check(CapabilityList.Of(words), halfWatts / 2.0);

        Assert.NotEmpty(check.Words);
        Assert.DoesNotContain(check.Words, sentence => sentence.Contains("certif", StringComparison.OrdinalIgnoreCase) || sentence.Contains("compl", StringComparison.OrdinalIgnoreCase));
        Assert.Equal(check.Rules.Voltages.Count, check.Voltages.Count);
    });

    [Fact]
    public void Of_MoreCurrent_NeverMovesAVoltageBelowTheRule() => Gen.Select(Gen.Int[0, 500], Gen.Int[0, 500], Gen.Int[2, 200]).Sample((a, b, halfWatts) =>
    {
        int Short(int tens) => Check(Of(new Capability.Fixed(5000, tens * 10 + 10)), halfWatts / 2.0).BelowRuleMv.Count();
        Assert.True(Short(Math.Max(a, b)) <= Short(Math.Min(a, b)));
    });

    private static CapabilityList Of(params Capability[] capabilities) => new(capabilities.Select((capability, i) => new PlacedCapability(i + 1, capability, null, WordOrigin.Word)));

    private static PowerRuleCheck Check(CapabilityList list, double pdp) => PowerRuleCheck.Of(list, PowerRules.For(pdp)!);
}
