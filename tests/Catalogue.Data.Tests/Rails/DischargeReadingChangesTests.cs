using Catalogue.Data.Rails;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Rails;
using Catalogue.Domain.Teardowns;
using Catalogue.Testing;

namespace Catalogue.Data.Tests.Rails;

public sealed class DischargeReadingChangesTests : DatabaseTests
{
    // The clock of the tests stands at eight past seven.
    private static readonly DateTimeOffset Taken = new(2031, 5, 6, 9, 5, 0, TimeSpan.FromHours(2));

    private DischargeReadingChanges Changes => Database.Get<DischargeReadingChanges>();

    [Fact]
    public async Task Add_WithAnOffset_KeepsTheMomentAndTheCases()
    {
        var teardown = await Bench.TeardownAsync();
        var rail = await Bench.PackAsync(teardown.Id, 22, 600, 0.893);
        await AddAsync(teardown.Id, Form(form => (form.RailId, form.LowV, form.HighV) = (rail.Value, 0.3, 0.5)));

        var reading = Assert.Single((await RecordAsync(teardown.Slug)).DischargeReadings);

        Assert.Equal((rail, "C1, at its pins", 0.3, 0.4, 0.5), (reading.RailId!.Value, reading.Place, reading.LowV, reading.NominalV, reading.HighV));
        Assert.Equal((Taken, TimeSpan.Zero, "Pardel meter"), (reading.TakenAt, reading.TakenAt.Offset, reading.Instrument));
        Assert.Equal(DischargeState.BelowLimit, reading.StateAt(Database.Clock.GetUtcNow()));
        Database.Clock.Advance(TimeSpan.FromMinutes(10));
        Assert.Equal(DischargeState.Stale, reading.StateAt(Database.Clock.GetUtcNow()));
    }

    public static TheoryData<string, Action<DischargeReadingForm>> OutOfSense => new()
    {
        { "place", form => form.Place = "" },
        { "place", form => form.Place = "C1\0" },
        { "place", form => form.Place = "\ud83dC1" },
        { "place", form => form.Place = new string('a', 201) },
        { "instrument", form => form.Instrument = "meter\u001b" },
        { "nominal_v", form => form.NominalV = null },
        { "nominal_v", form => form.NominalV = double.NaN },
        { "nominal_v", form => form.NominalV = double.NegativeInfinity },
        { "nominal_v", form => form.NominalV = -340 },
        { "nominal_v", form => form.NominalV = 1e300 },
        { "nominal_v", form => (form.LowV, form.NominalV) = (0.5, 0.4) },
        { "nominal_v", form => (form.NominalV, form.HighV) = (null, 60) },
        { "low_v", form => form.LowV = -0.1 },
        { "high_v", form => form.HighV = 100_001 },
        { "taken_at", form => form.TakenAt = null },
        { "taken_at", form => form.TakenAt = Taken.AddMinutes(10) },
        { "taken_at", form => form.TakenAt = DateTimeOffset.MaxValue },
        { "taken_at", form => form.TakenAt = default(DateTimeOffset) },
    };

    [Theory]
    [MemberData(nameof(OutOfSense), DisableDiscoveryEnumeration = true)]
    public async Task Add_OutOfSense_IsRefusedByFieldAndLeavesNothing(string field, Action<DischargeReadingForm> change)
    {
        var teardown = await Bench.TeardownAsync();

        var outcome = await Changes.AddAsync(teardown.Id, Form(change), Bench.Reviewer);

        var refused = Assert.IsType<ChangeOutcome<DischargeReadingId>.Refused>(outcome);
        Assert.Equal(field, refused.Field);
        Assert.True(refused.Reason.Length > 15, refused.Reason);
        Assert.Empty((await RecordAsync(teardown.Slug)).DischargeReadings);
    }

    [Fact]
    public async Task Add_OfARailOfAnotherTeardown_IsRefused()
    {
        var teardown = await Bench.TeardownAsync();
        var other = await Bench.PackAsync((await Bench.TeardownAsync("Sorvane", "Drover 1000")).Id, 22, 600, 0.893);

        Assert.IsType<ChangeOutcome<DischargeReadingId>.Refused>(await Changes.AddAsync(teardown.Id, Form(form => form.RailId = other.Value), Bench.Reviewer));
    }

    [Fact]
    public async Task Amend_ByTwoWhoSawTheSame_KeepsTheFirstAndTellsTheSecond()
    {
        var teardown = await Bench.TeardownAsync();
        var reading = await AddAsync(teardown.Id, Form());
        var seen = (await RecordAsync(teardown.Slug)).DischargeReadings[0].Version;

        Bench.Done(await AmendAsync(reading, seen, form => form.NominalV = 310));
        Assert.IsType<ChangeOutcome<DischargeReadingId>.Stale>(await AmendAsync(reading, seen, form => form.NominalV = 0.2));

        var row = (await RecordAsync(teardown.Slug)).DischargeReadings[0];
        Assert.Equal((310.0, 310.0, 310.0), (row.LowV, row.NominalV, row.HighV));
    }

    [Fact]
    public async Task Amend_AfterPublication_LeavesThePublishedAsItWas()
    {
        var teardown = await Bench.TeardownAsync();
        var reading = await AddAsync(teardown.Id, Form());
        await Bench.PublishAsync(teardown.Slug);
        var published = (await Database.Get<TeardownRecordQuery>().PublishedAsync(teardown.Slug))!.DischargeReadings[0];

        Bench.Done(await AmendAsync(reading, published.Version, form => form.Place = "C2"));
        Assert.IsType<ChangeOutcome<DischargeReadingId>.Stale>(await AmendAsync(reading, published.Version, form => form.Place = "C3"));

        Assert.Equal("C2", (await RecordAsync(teardown.Slug)).DischargeReadings[0].Place);
        Assert.Equal("C1, at its pins", (await Database.Get<TeardownRecordQuery>().PublishedAsync(teardown.Slug))!.DischargeReadings[0].Place);
    }

    [Fact]
    public async Task Remove_TheRail_KeepsTheReadingWithoutIt()
    {
        var teardown = await Bench.TeardownAsync();
        var rail = await Bench.PackAsync(teardown.Id, 22, 600, 0.893);
        await AddAsync(teardown.Id, Form(form => form.RailId = rail.Value));

        Bench.Done(await Database.Get<RailChanges>().RemoveAsync(rail, null, Bench.Reviewer));

        Assert.Null(Assert.Single((await RecordAsync(teardown.Slug)).DischargeReadings).RailId);
    }

    [Fact]
    public async Task Remove_AReading_TakesItOutOfTheDraftOnly()
    {
        var teardown = await Bench.TeardownAsync();
        var reading = await AddAsync(teardown.Id, Form());
        await Bench.PublishAsync(teardown.Slug);

        Bench.Done(await Changes.RemoveAsync(reading, null, Bench.Reviewer));

        Assert.Empty((await RecordAsync(teardown.Slug)).DischargeReadings);
        Assert.Single((await Database.Get<TeardownRecordQuery>().PublishedAsync(teardown.Slug))!.DischargeReadings);
    }

    private async Task<DischargeReadingId> AddAsync(TeardownId teardown, DischargeReadingForm form) => Bench.Done(await Changes.AddAsync(teardown, form, Bench.Reviewer));

    private Task<ChangeOutcome<DischargeReadingId>> AmendAsync(DischargeReadingId reading, uint? version, Action<DischargeReadingForm> change) => Changes.AmendAsync(
        reading,
        version,
        form =>
        {
            change(form);
            return new ChangeOutcome<DischargeReadingForm>.Done(form);
        },
        Bench.Reviewer);

    private async Task<TeardownRecord> RecordAsync(string slug) => (await Database.Get<TeardownRecordQuery>().LatestAsync(slug))!;

    private static DischargeReadingForm Form(Action<DischargeReadingForm>? change = null)
    {
        var form = new DischargeReadingForm { Place = "C1, at its pins", NominalV = 0.4, TakenAt = Taken, Instrument = "Pardel meter" };
        change?.Invoke(form);
        return form;
    }
}
