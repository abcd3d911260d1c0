using Catalogue.Data.Rails;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Rails;
using Catalogue.Testing;

namespace Catalogue.Data.Tests.Rails;

public sealed class RailChangesTests : DatabaseTests
{
    [Fact]
    public async Task Amend_AfterSomebodyElseChangedOnlyAQuantity_IsStaleAndKeepsIt()
    {
        var teardown = await Bench.TeardownAsync();
        var rail = await Bench.PackAsync(teardown.Id, 22, 600, 0.893);
        var seen = (await DraftAsync(teardown.Slug)).Rails[0].Version;

        Bench.Done(await AmendAsync(rail, seen, form => form.MinVoltageV = Bench.Measured(10.5)));
        var late = await AmendAsync(rail, seen, form => (form.MinVoltageV, form.Note) = (Bench.Measured(22), "late"));

        Assert.IsType<ChangeOutcome<RailId>.Stale>(late);
        var record = await DraftAsync(teardown.Slug);
        Assert.Equal(10.5, Assert.Single(record.RailQuantities, row => row.Kind is RailQuantityKind.MinVoltage).Nominal);
        Assert.Null(record.Rails[0].Note);
    }

    [Fact]
    public async Task Amend_AfterAQuantityOfThePublishedRailChangedInTheDraft_IsStale()
    {
        var teardown = await Bench.TeardownAsync();
        var rail = await Bench.PackAsync(teardown.Id, 22, 600, 0.893);
        await Bench.PublishAsync(teardown.Slug);
        var seen = (await Database.Get<TeardownRecordQuery>().PublishedAsync(teardown.Slug))!.Rails[0].Version;

        Bench.Done(await AmendAsync(rail, seen, form => form.MinVoltageV = Bench.Measured(10.5)));
        var late = await AmendAsync(rail, seen, form => form.Note = "late");

        Assert.IsType<ChangeOutcome<RailId>.Stale>(late);
    }

    [Theory]
    [InlineData(50)]
    [InlineData(100)]
    public async Task Amend_OfAnExactQuantityByItsValueAlone_MovesItWhole(double watts)
    {
        var teardown = await Bench.TeardownAsync();
        var rail = await Bench.PackAsync(teardown.Id, 22, 60, 0.893);

        Bench.Done(await AmendAsync(rail, null, form => form.MaxPowerW = form.MaxPowerW! with { Nominal = watts }));

        var power = Assert.Single((await DraftAsync(teardown.Slug)).RailQuantities, row => row.Kind is RailQuantityKind.MaxPower);
        Assert.Equal((watts, watts, watts, "test 2"), (power.Low, power.Nominal, power.High, power.Source));
    }

    private Task<ChangeOutcome<RailId>> AmendAsync(RailId rail, uint? version, Action<RailForm> change) => Database.Get<RailChanges>().AmendAsync(
        rail,
        version,
        form =>
        {
            change(form);
            return new ChangeOutcome<RailForm>.Done(form);
        },
        Bench.Reviewer);

    private async Task<TeardownRecord> DraftAsync(string slug) => (await Database.Get<TeardownRecordQuery>().DraftAsync(slug))!;
}
