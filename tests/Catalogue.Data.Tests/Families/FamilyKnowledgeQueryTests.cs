using Catalogue.Data.Components;
using Catalogue.Data.Families;
using Catalogue.Data.Makers;
using Catalogue.Domain.Families;
using Catalogue.Testing;

namespace Catalogue.Data.Tests.Families;

public sealed class FamilyKnowledgeQueryTests : IAsyncLifetime
{
    private CatalogueDatabaseFixture _database = null!;

    public async ValueTask InitializeAsync()
    {
        _database = await CatalogueDatabaseFixture.CreateAsync();
        await TeardownAsync("Tor 600", isPublished: true, "YTQ65-080", "QX4R065N", "YTQ65-080X");
        await TeardownAsync("Marl 140", isPublished: false, "MWK-60N08");
        await _database.SqlAsync("""
            insert into makers (id, name, name_key, slug) values (gen_random_uuid(), 'Yttrel Devices', 'yttreldevices', 'yttrel-devices'), (gen_random_uuid(), 'Marrowick', 'marrowick', 'marrowick');
            insert into maker_aliases (maker_id, name, name_key) select id, 'Yttrel & Daughters', 'yttreldaughters' from makers where slug = 'yttrel-devices';
            insert into family_makers (family_id, maker_id) select f.id, m.id from families f, makers m where (f.slug, m.slug) in (('ytq65-080', 'yttrel-devices'), ('mwk-60n08', 'marrowick'));
            insert into family_aliases (match_key, name, kind, family_id) select 'YTQ65-080T', 'YTQ65-080T', 'ordering_variant', id from families where slug = 'ytq65-080';
            insert into family_top_marks (id, family_id, code, package, maker_id)
                select gen_random_uuid(), f.id, c.code, 'SOT-23', (select id from makers where slug = c.maker)
                from (values ('ytq65-080', 'A7T', 'yttrel-devices'), ('qx4r065n', 'a7t', null), ('mwk-60n08', 'A7T', 'marrowick'), ('qx4r065n', 'A7I', null)) c (slug, code, maker) join families f on f.slug = c.slug;
            update families set merged_into_id = (select id from families where slug = 'ytq65-080'), packages = '{}' where slug = 'ytq65-080x';
            """);
    }

    public async ValueTask DisposeAsync() => await _database.DisposeAsync();

    [Fact]
    public async Task RunAsync_WhatWasRecorded_IsRead()
    {
        var found = (await AskAsync("ytq65-080", seesDrafts: false))!;
        Assert.Equal([new("YTQ65-080T", FamilyNameKind.OrderingVariant), new("YTQ65-080X", FamilyNameKind.OtherNumber)], found.Numbers);
        Assert.Equal([new("yttrel-devices", "Yttrel Devices")], found.Makers);
        var code = Assert.Single(found.Codes);
        Assert.Equal(("A7T", "Yttrel Devices", "SOT-23"), (code.Text, code.Maker, code.Package));
    }

    [Fact]
    public async Task RunAsync_ACodeThatOthersShare_SaysWithWhomAsFarAsTheAskerMaySee()
    {
        Assert.Equal([new("qx4r065n", "QX4R065N", null)], Assert.Single((await AskAsync("ytq65-080", seesDrafts: false))!.Codes).Sharers);
        Assert.Equal(["mwk-60n08", "qx4r065n"], Assert.Single((await AskAsync("ytq65-080", seesDrafts: true))!.Codes).Sharers.Select(sharer => sharer.Slug).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task RunAsync_AMergedFamilyOrNone_IsNothing()
    {
        Assert.Null(await AskAsync("ytq65-080x", seesDrafts: true));
        Assert.Null(await AskAsync("no-such", seesDrafts: true));
    }

    [Fact]
    public async Task Maker_OfAPublishedFamily_HasAPageWithItsOtherNames()
    {
        var maker = (await _database.Get<MakerQuery>().RunAsync("yttrel-devices", seesDrafts: false, TestContext.Current.CancellationToken))!;
        Assert.Equal(["Yttrel & Daughters"], maker.OtherNames);
        Assert.Equal([new("ytq65-080", "YTQ65-080", null, 1)], maker.Families);
        Assert.Empty(maker.Products);
    }

    [Fact]
    public async Task Maker_OfPublishedProducts_ListsThemWithoutDrafts()
    {
        var maker = (await _database.Get<MakerQuery>().RunAsync("ferrowick", seesDrafts: false, TestContext.Current.CancellationToken))!;
        Assert.Equal("Tor 600", Assert.Single(maker.Products).Name);
    }

    [Fact]
    public async Task Maker_ThatOnlyADraftLeadsTo_IsNotShownToReaders()
    {
        Assert.Null(await _database.Get<MakerQuery>().RunAsync("marrowick", seesDrafts: false, TestContext.Current.CancellationToken));
        Assert.NotNull(await _database.Get<MakerQuery>().RunAsync("marrowick", seesDrafts: true, TestContext.Current.CancellationToken));
    }

    private Task<FamilyKnowledgeQuery.Knowledge?> AskAsync(string slug, bool seesDrafts) => _database.Get<FamilyKnowledgeQuery>().RunAsync(slug, seesDrafts, TestContext.Current.CancellationToken);

    private async Task TeardownAsync(string product, bool isPublished, params string[] numbers)
    {
        var bench = new Bench(_database);
        var teardown = await bench.TeardownAsync(name: product);
        var board = await bench.BoardAsync(teardown.Id);
        foreach (var number in numbers)
            await bench.ComponentAsync(board, new ComponentForm { PartNumber = number });
        if (isPublished)
            await bench.PublishAsync(teardown.Slug);
    }
}
