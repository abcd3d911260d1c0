using Catalogue.Data.Components;
using Catalogue.Data.Families;
using Catalogue.Data.Makers;
using Catalogue.Data.Photos;
using Catalogue.Data.Products;
using Catalogue.Data.Teardowns;
using Catalogue.Testing;

namespace Catalogue.Data.Tests.Teardowns;

/// <summary>What only drafts mention does not exist for readers.</summary>
public sealed class VisibilityTests : DatabaseTests
{
    private static readonly string Picture = new('c', 64);

    [Fact]
    public async Task Readers_BeforePublication_SeeNothingOfADraft()
    {
        var teardown = await DraftAsync();

        Assert.Empty((await Database.Get<TeardownsQuery>().PublishedAsync(new())).Items);
        Assert.Null(await Database.Get<TeardownRecordQuery>().PublishedAsync(teardown.Slug));
        Assert.Null(await Database.Get<TeardownRecordQuery>().RevisionAsync(teardown.Slug, 1));
        Assert.Empty((await Database.Get<FamiliesQuery>().RunAsync(null, null, 50, seesDrafts: false)).Items);
        Assert.IsType<FamilyQuery.Answer.Nothing>(await Database.Get<FamilyQuery>().RunAsync("mwk-721", seesDrafts: false));
        Assert.Empty((await Database.Get<MakersQuery>().RunAsync(null, null, 50, seesDrafts: false)).Items);
        Assert.Null(await Database.Get<MakersQuery>().FindAsync("ferrowick", seesDrafts: false));
        Assert.Empty((await Database.Get<ProductsQuery>().RunAsync(null, null, null, 50, seesDrafts: false)).Items);
        Assert.IsType<RenditionQuery.Answer.Nothing>(await Database.Get<RenditionQuery>().RunAsync(Picture, 480, seesDrafts: false));
    }

    [Fact]
    public async Task TheLab_BeforePublication_SeesAllOfIt()
    {
        await DraftAsync();

        Assert.Single((await Database.Get<TeardownsQuery>().LabAsync(new())).Items);
        Assert.Single((await Database.Get<FamiliesQuery>().RunAsync(null, null, 50, seesDrafts: true)).Items);
        Assert.Single((await Database.Get<MakersQuery>().RunAsync(null, null, 50, seesDrafts: true)).Items);
        Assert.Single((await Database.Get<ProductsQuery>().RunAsync(null, null, null, 50, seesDrafts: true)).Items);
        Assert.IsType<RenditionQuery.Answer.NotYet>(await Database.Get<RenditionQuery>().RunAsync(Picture, 480, seesDrafts: true));
    }

    [Fact]
    public async Task Readers_AfterPublication_SeeItAndNotTheNextDraft()
    {
        var teardown = await DraftAsync();
        await Bench.PublishAsync(teardown.Slug);
        var board = await Bench.BoardAsync(teardown.Id, "Hidden board");
        await Bench.ComponentAsync(board, new ComponentForm { PartNumber = "SECRET-9000" });

        Assert.Single((await Database.Get<TeardownsQuery>().PublishedAsync(new())).Items);
        Assert.Equal("mwk-721", Assert.Single((await Database.Get<FamiliesQuery>().RunAsync(null, null, 50, seesDrafts: false)).Items).Slug);
        Assert.IsType<FamilyQuery.Answer.Nothing>(await Database.Get<FamilyQuery>().RunAsync("secret-9000", seesDrafts: false));
        Assert.Single((await Database.Get<TeardownRecordQuery>().PublishedAsync(teardown.Slug))!.Boards);
        Assert.IsType<RenditionQuery.Answer.NotYet>(await Database.Get<RenditionQuery>().RunAsync(Picture, 480, seesDrafts: false));
        Assert.IsType<RenditionQuery.Answer.Nothing>(await Database.Get<RenditionQuery>().RunAsync(Picture, 481, seesDrafts: false));
    }

    [Fact]
    public async Task Lists_PageByPage_GiveEachRowOnce()
    {
        for (var i = 0; i < 5; i++)
        {
            var teardown = await Bench.TeardownAsync("Ferrowick", $"Tor {i}");
            await Bench.ComponentAsync(await Bench.BoardAsync(teardown.Id), new ComponentForm { PartNumber = $"MWK-72{i}" });
            await Bench.PublishAsync(teardown.Slug);
        }

        var teardowns = await AllAsync(async after => await Database.Get<TeardownsQuery>().PublishedAsync(new() { After = after, Limit = 2 }));
        var families = await AllAsync(async after => await Database.Get<FamiliesQuery>().RunAsync(null, after, 2, false));
        var products = await AllAsync(async after => await Database.Get<ProductsQuery>().RunAsync("tor", null, after, 2, false));

        Assert.Equal(["ferrowick-tor-4", "ferrowick-tor-3", "ferrowick-tor-2", "ferrowick-tor-1", "ferrowick-tor-0"], teardowns.Select(row => row.Slug));
        Assert.Equal(["mwk-720", "mwk-721", "mwk-722", "mwk-723", "mwk-724"], families.Select(row => row.Slug));
        Assert.Equal(["Tor 0", "Tor 1", "Tor 2", "Tor 3", "Tor 4"], products.Select(row => row.Name));
    }

    [Theory]
    [InlineData("mwk721", 1)]
    [InlineData("k-72", 1)]
    [InlineData("MW", 1)]
    [InlineData("W7", 0)]
    [InlineData("%", 0)]
    [InlineData("_", 0)]
    public async Task Families_SearchedByPartOfANumber_AreFoundWhateverTheDashes(string search, int found)
    {
        await Bench.PublishAsync((await DraftAsync()).Slug);

        Assert.Equal(found, (await Database.Get<FamiliesQuery>().RunAsync(search, null, 50, seesDrafts: false)).Items.Count);
    }

    private static async Task<List<T>> AllAsync<T>(Func<string?, Task<Page<T>>> ask)
    {
        var rows = new List<T>();
        string? after = null;
        do
        {
            var page = await ask(after);
            rows.AddRange(page.Items);
            after = page.Next;
        }
        while (after is not null);
        return rows;
    }

    private async Task<CreateTeardown.Created> DraftAsync()
    {
        var teardown = await Bench.TeardownAsync();
        var board = await Bench.BoardAsync(teardown.Id);
        await Bench.ComponentAsync(board, new ComponentForm { Designators = "U1", PartNumber = "MWK-721" });
        Bench.Done(await Database.Get<PhotoChanges>().AddAsync(teardown.Id, new PhotoChanges.TakenIn(Picture, "jpeg", 10, 2000, 1500, null), new PhotoForm { BoardId = board.Value }, Bench.Reviewer));
        return teardown;
    }
}
