using Catalogue.Domain.UsbPd;
using CsCheck;

namespace Catalogue.Domain.Tests.UsbPd;

public sealed class SupplyEnvelopeTests
{
    [Fact]
    public void Of_FixedSupplies_AreSpikes()
    {
        var envelope = SupplyEnvelope.Of(CapabilityList.Of([0x0801912C, 0x0002D115]));

        Assert.Equal([new SupplyRegion(1, SupplyKind.Fixed, [], false), new SupplyRegion(2, SupplyKind.Fixed, [], false)], envelope.Regions.Select(region => region with { Limit = [] }));
        Assert.Equal(Points((5, 0), (5, 3), (5, 0), (9, 0), (9, 2.77), (9, 0)), envelope.Outer);
    }

    [Fact]
    public void Of_ProgrammableSupply_IsARectangle()
    {
        var envelope = SupplyEnvelope.Of(CapabilityList.Of([0x0801912C, 0xC0DC213C]));

        Assert.Equal(Points((3.3, 3), (11, 3)), envelope.Regions[1].Limit);
        Assert.False(envelope.Regions[1].MayGiveLess);
        Assert.Equal(Points((3.3, 0), (3.3, 3), (5, 3), (11, 3), (11, 0)), envelope.Outer);
    }

    [Fact]
    public void Of_PowerLimitedSupply_IsCutWhereThePowerIsKnown()
    {
        var list = CapabilityList.Of([0x0801912C, 0xC9A43264]);

        Assert.True(SupplyEnvelope.Of(list).Regions[1].MayGiveLess);
        var limited = SupplyEnvelope.Of(list, 65).Regions[1];
        Assert.False(limited.MayGiveLess);
        Assert.Contains(new EnvelopePoint(13, 5), limited.Limit); // 65 W at 5 A
        Assert.Equal(65.0 / 21, limited.Limit[^1].CurrentA, 1e-12);
    }

    [Fact]
    public void Of_AdjustableSupply_HasTwoBands() =>
        Assert.Equal(Points((9, 3), (15, 3), (15, 5), (20, 5)), SupplyEnvelope.Of(CapabilityList.Of([0xE004B1F4])).Regions.Single().Limit);

    [Fact]
    public void Of_AdjustableSupplyThatStopsAtFifteen_HasOne() =>
        Assert.Equal(Points((9, 2.4), (15, 2.4)), SupplyEnvelope.Of(CapabilityList.Of([0xE003C000])).Regions.Single().Limit);

    [Fact]
    public void Of_ExtendedAdjustableSupply_BendsAtItsPower()
    {
        var limit = SupplyEnvelope.Of(CapabilityList.Of([0xD2D096A0])).Regions.Single().Limit; // 15 V to 36 V, 160 W

        Assert.Equal((new EnvelopePoint(15, 5), new EnvelopePoint(32, 5)), (limit[0], limit[1]));
        Assert.Equal(4.44444, limit[^1].CurrentA, 1e-5);
        Assert.All(limit.Skip(1), point => Assert.Equal(160, point.VoltageV * point.CurrentA, 1e-9));
    }

    [Fact]
    public void Of_Battery_HasConstantPower() =>
        Assert.All(SupplyEnvelope.Of(CapabilityList.Of([0x4FC2D06C])).Regions.Single().Limit, point => Assert.Equal(27, point.VoltageV * point.CurrentA, 1e-9));

    [Fact]
    public void Of_NothingOffered_IsEmpty()
    {
        var envelope = SupplyEnvelope.Of(CapabilityList.Of([0x00019000, 0, 0xF0001234]));
        Assert.Empty(envelope.Regions);
        Assert.Empty(envelope.Outer);
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(-1.0)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Of_PowerThatIsNone_IsABug(double pdp) => Assert.Throws<ArgumentOutOfRangeException>(() => SupplyEnvelope.Of(CapabilityList.Of([]), pdp));

    [Fact]
    public void Outer_OfAnyList_IsTheHighestCurrentEverywhere() => Gen.Select(Gen.UInt.List[1, 9], Gen.Double[0, 1], Gen.Bool).Sample((words, at, isKnown) =>
    {
        var list = CapabilityList.Of(words);
        double? pdp = isKnown ? 65 : null;
        var outer = SupplyEnvelope.Of(list, pdp).Outer;
        if (outer.Count == 0 || outer[0].VoltageV == outer[^1].VoltageV)
            return;

        Assert.All(outer.Zip(outer.Skip(1)), pair => Assert.True(pair.First.VoltageV <= pair.Second.VoltageV));
        Assert.Equal((0, 0), (outer[0].CurrentA, outer[^1].CurrentA));
        Assert.All(outer, point => Assert.True(double.IsFinite(point.CurrentA) && point.CurrentA >= 0));
        var voltage = outer[0].VoltageV + (at * (outer[^1].VoltageV - outer[0].VoltageV));
        var (left, right) = outer.Zip(outer.Skip(1)).First(pair => pair.First.VoltageV < pair.Second.VoltageV && pair.Second.VoltageV >= voltage);
        var drawn = left.CurrentA + ((right.CurrentA - left.CurrentA) * (voltage - left.VoltageV) / (right.VoltageV - left.VoltageV));
        if (voltage > left.VoltageV && voltage < right.VoltageV)
            Assert.InRange(drawn, SupplyEnvelope.CurrentAt(list, voltage, pdp) - 1e-9, (SupplyEnvelope.CurrentAt(list, voltage, pdp) * 1.0005) + 1e-9);
    });

    private static EnvelopePoint[] Points(params (double Voltage, double Current)[] points) => [.. points.Select(point => new EnvelopePoint(point.Voltage, point.Current))];
}
