using Catalogue.Data.Teardowns;
using Catalogue.Domain.Components;
using Catalogue.Domain.Products;
using Catalogue.Domain.Teardowns;
using Catalogue.Site.Search;

namespace Catalogue.Site.Tests.Search;

public sealed class SearchReasonsTests
{
    [Theory]
    [InlineData("ferrowick", "“ferrowick” in the brand")]
    [InlineData("TOR 600", "“TOR” in the product's name, “600” in the model")]
    [InlineData("teardown apart", "“teardown” and “apart” in the title")]
    public void For_Teardown_SaysWhereEachWordStands(string search, string words) => Assert.Equal(words, SearchReasons.For(search, Item()));

    [Fact]
    public void For_WordThatStandsNowhere_SaysNothing() => Assert.Null(SearchReasons.For("lath", Item()));

    [Fact]
    public void For_Component_NamesEachFieldThatHoldsAWord() =>
        Assert.Equal(
            "in the marking as read and the maker as read",
            SearchReasons.For("ytq YTTREL", new MarkingsQuery.Row("tor-600", "Tor", ComponentId.New(), "Q5", "YTQ65-O8O Y2231", null, "Yttrel")));

    private static TeardownListItem Item() => new()
    {
        Id = TeardownId.New(),
        Slug = "tor-600",
        Number = 41,
        Title = "A teardown, taken apart",
        Brand = "Ferrowick",
        ProductName = "Tor",
        Model = "FT-600",
        Category = ProductCategory.PowerStation,
        Standfirst = null,
        RevisionNumber = 1,
        State = RevisionState.Published,
        PublishedAt = null,
    };
}
