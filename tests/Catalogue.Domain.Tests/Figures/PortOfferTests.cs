using Catalogue.Domain.Components;
using Catalogue.Domain.Consistency;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Products;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Rails;
using Catalogue.Domain.Teardowns;

namespace Catalogue.Domain.Tests.Figures;

public sealed class PortOfferTests
{
    [Fact]
    public void Of_CapturedWords_AreDecodedAndThePowerLimitedOneAddsNoPower()
    {
        // 5 V 3 A, 9 V 3 A, 20 V 3.25 A, programmable to 21 V 5 A with the power-limited flag.
        var offer = PortOffer.Of(Port("65 W", "0x0801912C", "0x0002D12C", "0x00064145", "0xC9A43264"))!;
        Assert.Equal((5, 21, 5, 65, true), (offer.MinVolts, offer.MaxVolts, offer.MaxAmperes, offer.MaxWatts, offer.IsDecoded));
    }

    [Theory]
    [InlineData("5V⎓3A, 9V⎓2A, 12V⎓1.5A", 5, 12, 3, 18)]
    [InlineData("5 V/2.4 A", 5, 5, 2.4, 12)]
    [InlineData("230 V~ 600 W", 230, 230, 600.0 / 230, 600)]
    public void Of_Label_GivesEachVoltageItsCurrent(string printed, double min, double max, double amperes, double watts)
    {
        var offer = PortOffer.Of(Port(printed))!;
        Assert.Equal((min, max, false), (offer.MinVolts, offer.MaxVolts, offer.IsDecoded));
        WorkedExamples.Near(amperes, offer.MaxAmperes);
        WorkedExamples.Near(watts, offer.MaxWatts);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("USB-C")]
    [InlineData("65 W")]
    public void Of_NothingThatSaysAVoltage_IsNoOffer(string? printed) => Assert.Null(PortOffer.Of(Port(printed)));

    [Fact]
    public void Rail_OfAPort_TakesWhatThePortOffers()
    {
        var port = Port(null, "0x0801912C", "0x00064145");
        var rail = Bench.Rail(kind: RailKind.LowVoltage);
        rail.Rail.PortId = port.Id;
        var facts = Bench.Part(FunctionClass.Connector, rail, [Bench.Rating(RatingKind.RatedCurrent, 6.5)]) with { Ports = [port] };
        var found = Assert.Single(facts.ByRail());
        Assert.Equal((20, 3.25), (found.Of(RailQuantityKind.MaxVoltage)!.Interval.Nominal, found.Of(RailQuantityKind.MaxCurrent)!.Interval.Nominal));
        Assert.Equal(Evidence.Decoded, found.Of(RailQuantityKind.MaxVoltage)!.Evidence);
        WorkedExamples.Near(0.5, Bench.Computed(facts, CurrentMargin.Rule).Value.Nominal);
    }

    [Theory]
    [InlineData("65 W total", 65, null)]
    [InlineData("45W", 45, "port_above_total")]
    [InlineData("100W", 100, "total_above_ports")]
    public void Ports_AgainstTheClaimedTotal_AreCompared(string printed, double total, string? code)
    {
        var facts = new ConsistencyFacts(
            new RevisionFacts([], [], [], []) { Ports = [Port("5V⎓3A, 20V⎓3.25A", "0x0801912C", "0x00064145")] },
            [new Claim { RevisionId = default, Id = ClaimId.New(), Subject = "total output", AsPrinted = printed, Value = total, Unit = Unit.Watt }], [], [], [], []);
        Assert.Equal(code, Contradictions.Find(facts).SingleOrDefault()?.Code);
    }

    [Fact]
    public void Words_ThatOfferLessThanPrinted_AreWorthALook()
    {
        var facts = new ConsistencyFacts(new RevisionFacts([], [], [], []) { Ports = [Port("5V⎓3A, 20V⎓5A", "0x0801912C", "0x00064145")] }, [], [], [], [], []);
        var found = Assert.Single(Contradictions.Find(facts));
        Assert.Equal(("capabilities_against_label", ContradictionSeverity.LookAgain), (found.Code, found.Severity));
    }

    private static Port Port(string? printed, params string[] words) => new()
    {
        RevisionId = RevisionId.New(),
        Id = PortId.New(),
        Name = "C1",
        Kind = "USB-C",
        Direction = PortDirection.Output,
        AsPrinted = printed,
        CapabilityWords = words,
    };
}
