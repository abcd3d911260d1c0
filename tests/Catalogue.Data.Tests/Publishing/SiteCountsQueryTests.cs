using Catalogue.Data.Components;
using Catalogue.Data.Publishing;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Products;

namespace Catalogue.Data.Tests.Publishing;

/// <summary>The counts of the first page and the search of markings, before and after publication.</summary>
public sealed class SiteCountsQueryTests : DatabaseTests
{
    [Fact]
    public async Task Readers_BeforePublication_CountAndFindNothing()
    {
        await DraftAsync();

        var counts = await Database.Get<SiteCountsQuery>().RunAsync();
        Assert.Equal((0, 0, 0, 0, 0, 0), (counts.Teardowns, counts.Components, counts.Families, counts.Makers, counts.Computed, counts.Unknown));
        Assert.Empty(await Database.Get<MarkingsQuery>().RunAsync("MWK", 10));
    }

    [Fact]
    public async Task Readers_AfterPublication_CountWhatWasPublishedAndNotTheNextDraft()
    {
        var teardown = await DraftAsync();
        await Bench.PublishAsync(teardown.Slug);
        await Bench.ComponentAsync(await Bench.BoardAsync(teardown.Id, "Hidden board"), new ComponentForm { PartNumber = "MWK-900", MarkingAsRead = "MWK-900" });

        var counts = await Database.Get<SiteCountsQuery>().RunAsync();
        Assert.Equal([KeyValuePair.Create(ProductCategory.PowerStation, 1)], counts.ByCategory);
        Assert.Equal((2, 1, 1), (counts.Components, counts.Families, counts.Makers));
        Assert.Equal([KeyValuePair.Create(Verdict.Unknown, 2)], counts.ByVerdict);
        Assert.Equal((0, 2), (counts.Computed, counts.Unknown));
        var found = Assert.Single(await Database.Get<MarkingsQuery>().RunAsync("mwk", 10));
        Assert.Equal((teardown.Slug, "MWK-721 2236"), (found.Teardown, found.MarkingAsRead));
    }

    [Theory]
    [InlineData("2236 mwk", 1)]
    [InlineData("mwk_721", 0)]
    [InlineData("%", 0)]
    [InlineData("", 0)]
    public async Task Markings_Words_AreTakenLetterForLetter(string search, int found)
    {
        await Bench.PublishAsync((await DraftAsync()).Slug);

        Assert.Equal(found, (await Database.Get<MarkingsQuery>().RunAsync(search, 10)).Count);
    }

    private async Task<CreateTeardown.Created> DraftAsync()
    {
        var teardown = await Bench.TeardownAsync();
        var board = await Bench.BoardAsync(teardown.Id);
        await Bench.ComponentAsync(board, new ComponentForm { PartNumber = "MWK-721", MarkingAsRead = "MWK-721 2236", Designators = "U1" });
        await Bench.FuseAsync(board, rail: null, ampere: 35);
        return teardown;
    }
}
