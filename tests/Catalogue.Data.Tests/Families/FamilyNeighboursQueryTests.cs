using System.Diagnostics;
using Catalogue.Data.Components;
using Catalogue.Data.Families;
using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
using Catalogue.Testing;
using Catalogue.Testing.Identification;

namespace Catalogue.Data.Tests.Families;

public sealed class FamilyNeighboursQueryTests : IAsyncLifetime
{
    private CatalogueDatabaseFixture _database = null!;
    private Bench _bench = null!;

    public async ValueTask InitializeAsync()
    {
        _database = await CatalogueDatabaseFixture.CreateAsync();
        _bench = new Bench(_database);
    }

    public async ValueTask DisposeAsync() => await _database.DisposeAsync();

    [Fact]
    public async Task RunAsync_PublishedFamiliesOfOneClassAndPackage_AreSecondSourcesWhereRatingsCover()
    {
        await PublishedAsync(("YTQ65-080", 650, "TO-247"), ("QX4R065N", 700, "TO247"), ("MWK-60N08", 600, "TO-247"), ("ONV-65-85", 700, "TO-220"));
        var found = await FoundAsync("ytq65-080");
        Assert.Equal(["qx4r065n"], found.SecondSources.Select(row => row.Slug));
        Assert.Equal(
            ["same function: switch", "same package: TO-247", "rated voltage: 700\u00A0V where at least 650\u00A0V is needed", "rated current not known of either", "on-resistance, one part not known of either"],
            found.SecondSources[0].Neighbour.Reasons);
        Assert.Equal(["qx4r065n", "ytq65-080"], (await FoundAsync("mwk-60n08")).SecondSources.Select(row => row.Slug).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task RunAsync_ATypicalRating_GoesBeforeWhatTeardownsGive()
    {
        await PublishedAsync(("YTQ65-080", 650, "TO-247"), ("QX4R065N", 600, "TO-247"));
        Assert.Empty((await FoundAsync("ytq65-080")).SecondSources);
        await _database.SqlAsync("""
            insert into family_ratings (id, family_id, kind, low, nominal, high, evidence) select gen_random_uuid(), id, 'rated_voltage', 650, 650, 650, 'datasheet' from families where slug = 'qx4r065n'
            """);
        Assert.Equal(["qx4r065n"], (await FoundAsync("ytq65-080")).SecondSources.Select(row => row.Slug));
    }

    [Fact]
    public async Task RunAsync_AFamilyThatOnlyADraftMentions_IsSeenByTheLabAlone()
    {
        await PublishedAsync(("YTQ65-080", 650, "TO-247"));
        await DraftAsync(("QX4R065N", 700, "TO-247"), ("YTQ65-060", 500, "TO-247"), ("YTQ65-080G", 500, "TO-247"));
        var reader = await FoundAsync("ytq65-080");
        Assert.Empty(reader.SecondSources.Concat(reader.LookAlikes).Concat(reader.Versions));
        var lab = await FoundAsync("ytq65-080", seesDrafts: true);
        Assert.Equal(["qx4r065n", "ytq65-060", "ytq65-080g"], lab.SecondSources.Concat(lab.LookAlikes).Concat(lab.Versions).Select(row => row.Slug));
        Assert.IsType<FamilyNeighboursQuery.Answer.Nothing>(await AskAsync("qx4r065n", seesDrafts: false));
    }

    [Fact]
    public async Task RunAsync_ARatingThatOnlyADraftGives_DoesNotCoverForReaders()
    {
        var teardown = await PublishedAsync(("YTQ65-080", 650, "TO-247"), ("QX4R065N", null, "TO-247"));
        var component = ComponentId.From(await _database.ScalarAsync<Guid>("select id from components where part_number = 'QX4R065N'"));
        await _bench.RatingAsync(component, RatingKind.RatedVoltage, 700);
        Assert.Empty((await FoundAsync("ytq65-080")).SecondSources);
        Assert.Equal(["qx4r065n"], (await FoundAsync("ytq65-080", seesDrafts: true)).SecondSources.Select(row => row.Slug));
        await _bench.PublishAsync(teardown);
        Assert.Equal(["qx4r065n"], (await FoundAsync("ytq65-080")).SecondSources.Select(row => row.Slug));
    }

    [Fact]
    public async Task RunAsync_NamesThatAreAlike_AreLookAlikesOrVersionsWithTheirDifferences()
    {
        await PublishedAsync(("QS8205", null, null), ("QS8205A", null, null), ("QS82O5", null, null), ("QS8317", null, null), ("QLX-4N30D", null, null), ("QL\u0425-4N30D", null, null));
        var found = await FoundAsync("qs8205");
        Assert.Equal(["qs82o5"], found.LookAlikes.Select(row => row.Slug));
        Assert.Equal(["qs8205a"], found.Versions.Select(row => row.Slug));
        Assert.Equal("0 here, O there, which looks like it", Assert.Single(found.LookAlikes[0].Neighbour.Reasons));
        var homoglyph = Assert.Single((await FoundAsync("qlx-4n30d")).LookAlikes);
        Assert.Equal("X here, Cyrillic \u0425 there: they look the same", Assert.Single(homoglyph.Neighbour.Reasons));
    }

    [Theory]
    [InlineData("unrelated", 0, 0)]
    [InlineData("second_source", 1, 0)]
    [InlineData("look_alike", 0, 1)]
    public async Task RunAsync_TheReviewersWord_GoesBeforeWhatIsComputed(string kind, int sources, int alike)
    {
        await PublishedAsync(("YTQ65-080", 650, "TO-247"), ("MWK-60N08", kind == "second_source" ? 600 : 700, "TO-247"));
        await _database.SqlAsync($"""
            insert into family_relations (one_id, other_id, kind, note, at, who)
            select least(a.id, b.id), greatest(a.id, b.id), '{kind}', 'bench swap', now(), 'I. Sorrel' from families a, families b where a.slug = 'ytq65-080' and b.slug = 'mwk-60n08'
            """);
        var found = await FoundAsync("ytq65-080");
        Assert.Equal((sources, alike), (found.SecondSources.Count, found.LookAlikes.Count));
        Assert.All(found.SecondSources.Concat(found.LookAlikes), row => Assert.Contains("bench swap", row.Neighbour.Reasons[0], StringComparison.Ordinal));
        var back = await FoundAsync("mwk-60n08");
        Assert.Equal((sources, alike), (back.SecondSources.Count, back.LookAlikes.Count));
    }

    [Fact]
    public async Task RunAsync_AMergedFamily_LeadsOnAndCountsWithItsTarget()
    {
        await PublishedAsync(("YTQ65-080", 650, "TO-247"), ("QX4R065N", 700, "TO-247"), ("QX4R065", null, null));
        await _database.SqlAsync("update families set merged_into_id = (select id from families where slug = 'qx4r065') where slug = 'qx4r065n'");
        var row = Assert.Single((await FoundAsync("ytq65-080")).SecondSources);
        Assert.Equal("qx4r065", row.Slug);
        Assert.Equal("qx4r065", Assert.IsType<FamilyNeighboursQuery.Answer.Moved>(await AskAsync("qx4r065n", seesDrafts: false)).Slug);
    }

    [Fact]
    public async Task RunAsync_TheSameRoleInAnotherDesign_IsAReason()
    {
        await PublishedAsync(("YTQ65-080", 650, "TO-247"));
        await PublishedAsync("Lath 65", ("QX4R065N", 700, "TO-247"));
        Assert.Contains("seen as primary switch too, in 1 other design", Assert.Single((await FoundAsync("ytq65-080")).SecondSources).Neighbour.Reasons);
    }

    [Fact]
    public async Task RunAsync_NoSuchFamily_IsNothing() => Assert.IsType<FamilyNeighboursQuery.Answer.Nothing>(await AskAsync("no-such", seesDrafts: true));

    [Fact]
    public async Task RunAsync_OverManyDesigns_StaysBounded()
    {
        var all = InventedFamilies.Make(8_000, seed: 4);
        await InventedCatalogue.LoadAsync(_database, all);
        var chance = new Random(6);
        await InventedCatalogue.PublishAsync(_database, [.. Enumerable.Range(0, 60_000).Select(_ => (int)(all.Count * Math.Pow(chance.NextDouble(), 3)))]);
        await _database.SqlAsync("""
            insert into family_ratings (id, family_id, kind, low, nominal, high, evidence) select gen_random_uuid(), id, 'rated_voltage', 100, 100, 100, 'datasheet' from families;
            analyze;
            """);
        await AskAsync("invented-0", seesDrafts: false);
        foreach (var place in (int[])[0, 7, 100, 900])
        {
            var clock = Stopwatch.StartNew();
            var found = Assert.IsType<FamilyNeighboursQuery.Answer.Found>(await AskAsync(FormattableString.Invariant($"invented-{place}"), seesDrafts: false));
            TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"invented-{place}: {clock.ElapsedMilliseconds} ms, {found.SecondSources.Count} {found.LookAlikes.Count} {found.Versions.Count}"));
            Assert.True(clock.ElapsedMilliseconds < 4000, $"{clock.ElapsedMilliseconds} ms");
            Assert.All([found.SecondSources, found.LookAlikes, found.Versions], list => Assert.InRange(list.Count, 0, FamilyNeighbours.MaxInList));
        }
    }

    private Task<FamilyNeighboursQuery.Answer> AskAsync(string slug, bool seesDrafts) => _database.Get<FamilyNeighboursQuery>().RunAsync(slug, seesDrafts, TestContext.Current.CancellationToken);

    private async Task<FamilyNeighboursQuery.Answer.Found> FoundAsync(string slug, bool seesDrafts = false) => Assert.IsType<FamilyNeighboursQuery.Answer.Found>(await AskAsync(slug, seesDrafts));

    private Task<string> PublishedAsync(params (string Number, double? Volts, string? Package)[] parts) => PublishedAsync("Tor 600", parts);

    private async Task<string> PublishedAsync(string product, params (string Number, double? Volts, string? Package)[] parts)
    {
        var slug = await DraftAsync(product, parts);
        await _bench.PublishAsync(slug);
        return slug;
    }

    private Task<string> DraftAsync(params (string Number, double? Volts, string? Package)[] parts) => DraftAsync("Marl 140", parts);

    private async Task<string> DraftAsync(string product, (string Number, double? Volts, string? Package)[] parts)
    {
        var teardown = await _bench.TeardownAsync(name: product);
        var board = await _bench.BoardAsync(teardown.Id);
        foreach (var (number, volts, package) in parts)
        {
            var component = await _bench.ComponentAsync(board, new ComponentForm { PartNumber = number, Package = package, Role = "primary switch", FunctionClass = FunctionClass.Switch });
            if (volts is { } value)
                await _bench.RatingAsync(component, RatingKind.RatedVoltage, value);
        }

        return teardown.Slug;
    }
}
