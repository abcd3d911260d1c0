using Catalogue.Domain.Rails;
using Catalogue.Domain.Teardowns;
using CsCheck;

namespace Catalogue.Domain.Tests.Rails;

public sealed class DischargeReadingTests
{
    private static readonly DateTimeOffset Taken = new(2031, 5, 6, 13, 58, 0, TimeSpan.Zero);

    private static readonly RailId Bus = RailId.New();

    [Theory]
    [InlineData(0, DischargeState.BelowLimit)]
    [InlineData(180, DischargeState.BelowLimit)]
    [InlineData(599, DischargeState.BelowLimit)]
    [InlineData(600, DischargeState.Stale)]
    [InlineData(2040, DischargeState.Stale)]
    public void StateAt_ALowReading_IsStaleFromTenMinutesOn(int seconds, DischargeState expected) =>
        Assert.Equal(expected, Read(0.4).StateAt(Taken.AddSeconds(seconds)));

    [Theory]
    [InlineData(59.9, 59.9, 59.9, DischargeState.BelowLimit)]
    [InlineData(60, 60, 60, DischargeState.Charged)]
    [InlineData(310, 312, 314, DischargeState.Charged)]
    [InlineData(20, 40, 61, DischargeState.Charged)]
    public void StateAt_Fresh_IsDecidedByTheHighestCase(double low, double nominal, double high, DischargeState expected) =>
        Assert.Equal(expected, Read(nominal, low, high).StateAt(Taken.AddMinutes(1)));

    [Fact]
    public void StateAt_AMomentThatHasNotBeenYet_IsStale()
    {
        Assert.Equal(DischargeState.Stale, Read(0.4).StateAt(Taken.AddMinutes(-2)));
        Assert.Equal(DischargeState.BelowLimit, Read(0.4).StateAt(Taken.AddSeconds(-30)));
        Assert.Equal(TimeSpan.Zero, Read(0.4).AgeAt(Taken.AddSeconds(-30)));
    }

    [Fact]
    public void StateAt_EndsOfTime_AreAnswered()
    {
        Assert.Equal(DischargeState.Stale, Read(0.4).StateAt(DateTimeOffset.MaxValue));
        Assert.Equal(DischargeState.Stale, Read(0.4).StateAt(DateTimeOffset.MinValue));
    }

    [Fact]
    public void StateAt_AnyReadingAtAnyTime_CalmsOnlyBelowTheLimitAndWithinTenMinutes() =>
        Gen.Select(Gen.Double[0, 400], Gen.Double[0, 100], Gen.Int[-3600, 7200]).Sample((volts, more, seconds) =>
        {
            var reading = Read(volts, volts, volts + more);
            if (reading.StateAt(Taken.AddSeconds(seconds)) is not DischargeState.BelowLimit)
                return;
            Assert.True(volts + more < Cautions.TouchLimitVolts);
            Assert.InRange(seconds, -60, 599);
        });

    [Fact]
    public void StateAt_GrowingOlder_NeverTurnsFreshAgain() =>
        Gen.Select(Gen.Double[0, 400], Gen.Int[0, 7200], Gen.Int[0, 7200]).Sample((volts, seconds, later) =>
        {
            if (Read(volts).StateAt(Taken.AddSeconds(seconds)) is DischargeState.Stale)
                Assert.Equal(DischargeState.Stale, Read(volts).StateAt(Taken.AddSeconds(seconds + later)));
        });

    [Fact]
    public void LastOfEachPlace_ReadTwiceThere_KeepsTheLaterAndEveryOtherPlace()
    {
        var before = Read(310, place: "C1");
        var after = Read(0.4, place: " c1", minutes: 4);
        var elsewhere = Read(290, place: "C2", minutes: 1);
        var sameWordsOnAnotherRail = Read(5, place: "C1", minutes: 2, rail: RailId.New());

        Assert.Equal([after, sameWordsOnAnotherRail, elsewhere], DischargeReading.LastOfEachPlace([before, elsewhere, after, sameWordsOnAnotherRail]));
        Assert.Empty(DischargeReading.LastOfEachPlace([]));
    }

    private static DischargeReading Read(double nominal, double? low = null, double? high = null, string place = "C1", int minutes = 0, RailId? rail = null) => new()
    {
        RevisionId = RevisionId.New(),
        Id = DischargeReadingId.New(),
        RailId = rail ?? Bus,
        Place = place,
        LowV = low ?? nominal,
        NominalV = nominal,
        HighV = high ?? nominal,
        TakenAt = Taken.AddMinutes(minutes),
    };
}
