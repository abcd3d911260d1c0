using Catalogue.Domain.UsbPd;
using CsCheck;

namespace Catalogue.Domain.Tests.UsbPd;

public sealed class CapabilityListTests
{
    public static TheoryData<uint[], Type[]> Lists => new()
    {
        { [0x0801912C, 0x0002D12C, 0x0004B12C, 0x00064145, 0xE004B145, 0xC8DC2137, 0xC1A42141], [] },
        { [], [] },
        { [0x0002D12C], [typeof(ListFact.FirstIsNotFiveVolts)] },
        { [0x00019000], [typeof(ListFact.OffersNothingNow)] },
        { [0x0801912C, 0x0002D12C, 0x0002D0C8], [typeof(ListFact.SameVoltageTwice)] },
        { [0x0801912C, 0x0004B12C, 0x0002D12C], [typeof(ListFact.OutOfOrder)] },
        { [0x0801912C, 0xC8DC2137, 0xE004B145], [typeof(ListFact.OutOfOrder)] },
        { [0x0801912C, 0xC1A42141, 0xC8DC2137], [typeof(ListFact.OutOfOrder)] },
        { [0x0801912C, 0x8F030096, 0x4FC2D06C], [typeof(ListFact.OutOfOrder)] },
        { [0x0801912C, 0, 0x0002D12C], [typeof(ListFact.ZeroInStandardList)] },
        { [0x0801912C, 0x0008C1F4], [typeof(ListFact.ExtendedOutsideItsPlace)] },
        { [0x0801912C, 0xD1905A41], [typeof(ListFact.ExtendedOutsideItsPlace)] },
        { [0x0881912C, 0, 0, 0, 0, 0, 0, 0x0008C1F4, 0xD230968C], [typeof(ListFact.Padded)] },
        { [0x0881912C, 0, 0, 0, 0, 0, 0, 0x0008C1F4], [typeof(ListFact.Padded), typeof(ListFact.ExtendedAvsCount)] },
        { [0x0881912C, 0, 0, 0, 0, 0, 0, 0x0002D12C, 0xD230968C], [typeof(ListFact.Padded), typeof(ListFact.StandardInExtendedPlace)] },
        { [0x0801912C, 0xF0001234], [typeof(ListFact.ReservedType)] },
        { [0x0801912C, 0x0802D12C], [typeof(ListFact.ReservedBits)] },
        { [0x0801912C, 0x8F02D096], [typeof(ListFact.VariableTooWide)] },
        { [0x0801912C, 0x82D3C096], [typeof(ListFact.WindowUpsideDown)] },
        { [0x0801912C, 0x0000012C], [typeof(ListFact.NoVoltage), typeof(ListFact.OutOfOrder)] },
        { [0x0801912C, 0x0801912C], [typeof(ListFact.FlagsNotFirst), typeof(ListFact.SameVoltageTwice)] },
    };

    [Theory]
    [MemberData(nameof(Lists))]
    public void Facts_OfAList_AreSaid(uint[] words, Type[] facts) => Assert.Equal(facts, CapabilityList.Of(words).Facts.Select(fact => fact.GetType()));

    [Fact]
    public void Facts_OfTooManyObjects_SayHowMany()
    {
        Assert.Contains(new ListFact.TooMany(12), CapabilityList.Of(Enumerable.Repeat(0x0801912Cu, 12)).Facts);
        Assert.Contains(new ListFact.LongWithoutExtended(8), CapabilityList.Of(Enumerable.Range(1, 8).Select(i => (uint)(i * 50) << 10 | 300)).Facts);
    }

    [Fact]
    public void Facts_OfPadding_SayWhereNumberingGoesOn() =>
        Assert.Contains(CapabilityList.Of([0x0881912C, 0x0002D12C, 0x0004B12C, 0x000641F4, 0xE004B1F4, 0xC1A43264, 0, 0x0008C1F4, 0xD230968C]).Facts, fact => fact.Words == "Position 7 is padding (a zero word); numbering goes on at 8.");

    [Fact]
    public void NeedsCable_FollowsTheHighestCurrentAndVoltage()
    {
        Assert.False(CapabilityList.Of([0x0801912C, 0x0006412C, 0xC1A4323C]).NeedsFiveAmpereCable);
        Assert.True(CapabilityList.Of([0x0801912C, 0x0006412D]).NeedsFiveAmpereCable);
        Assert.False(CapabilityList.Of([0x0801912C, 0xC1A43264]).NeedsEprCable);
        Assert.True(CapabilityList.Of([0x0801912C, 0xD230968C]).NeedsEprCable);
    }

    [Fact]
    public void BestFixedPower_WithoutAFixedObject_IsUnknown() => Assert.Null(CapabilityList.Of([0xC0DC213C]).BestFixedPowerMw);

    [Fact]
    public void Swapped_IsOfferedOnlyWhereItMakesSense()
    {
        Assert.True(CapabilityList.Of([0x2C910108, 0x2CD10200]).LooksSwapped);
        Assert.False(CapabilityList.Of([0x0801912C, 0x0002D12C]).LooksSwapped);
        Assert.False(CapabilityList.Of([0x0002D12C]).LooksSwapped);
        Assert.Equal([0x0801912Cu, 0x0002D12Cu], CapabilityList.Of([0x2C910108, 0x2CD10200]).Swapped().Items.Select(item => item.Word!.Value));
    }

    [Fact]
    public void Sink_ListHasNoneOfASourcesFlags()
    {
        var first = new CapabilityList([PlacedCapability.Of(1, 0x3F81912C, WordOrigin.Word)], PortRole.Sink).Flags;
        Assert.Equal(SourceFlags.DualRolePower | SourceFlags.UnconstrainedPower | SourceFlags.UsbComm | SourceFlags.DualRoleData, first);
    }

    [Fact]
    public void List_WhosePositionsDoNotRise_IsABug() =>
        Assert.Throws<ArgumentException>(() => new CapabilityList([PlacedCapability.Of(2, 0x0801912C, WordOrigin.Word), PlacedCapability.Of(2, 0x0002D12C, WordOrigin.Word)]));

    [Fact]
    public void Of_AnyWords_KeepsEveryOneInItsPlace() => Gen.UInt.List[0, 40].Sample(words =>
    {
        var list = CapabilityList.Of(words);

        Assert.Equal(words, list.Items.Select(item => item.Word!.Value));
        Assert.Equal(Enumerable.Range(1, words.Count), list.Items.Select(item => item.Position));
        Assert.All(list.Facts, fact => Assert.EndsWith(".", fact.Words, StringComparison.Ordinal));
    });
}
