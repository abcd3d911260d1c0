using Bunit;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Products;
using Catalogue.Domain.Teardowns;
using Catalogue.Site.Teardowns;

namespace Catalogue.Site.Tests.Teardowns;

public sealed class TeardownListTests : BunitContext
{
    private static readonly string Sha = new('a', 64);

    [Fact]
    public void List_ItemWithPicture_OffersEveryRenditionAndNoOther()
    {
        var picture = List(Item(new TeardownListItem.LeadPicture(Sha, 1200, 900, "front"))).Find("img");
        Assert.Equal($"/media/{Sha}/480.jpg", picture.GetAttribute("src"));
        Assert.Equal($"/media/{Sha}/480.jpg 480w, /media/{Sha}/960.jpg 960w, /media/{Sha}/1200.jpg 1200w", picture.GetAttribute("srcset"));
        Assert.Equal("", picture.GetAttribute("alt"));
    }

    [Fact]
    public void List_ItemWithoutPicture_SaysSo() => Assert.Equal("no picture", List(Item(null)).Find(".no-picture").TextContent);

    [Fact]
    public void List_Tally_NamesEachVerdictWorstFirstAndLeavesOutNone()
    {
        var tally = List(Item(null)).FindAll(".verdict");
        Assert.Equal(["over-guideline", "adequate", "unknown"], tally.Select(mark => mark.GetAttribute("data-verdict")));
        Assert.Equal(["1 over guideline", "5 adequate", "2 unknown"], tally.Select(mark => mark.TextContent));
    }

    [Fact]
    public void List_WithoutFigures_SaysSoInsteadOfNothing() =>
        Assert.Contains("no figures yet", List(Item(null) with { Tally = new Dictionary<Verdict, int>() }).Markup, StringComparison.Ordinal);

    [Fact]
    public void List_TextOfPeople_IsText()
    {
        var list = List(Item(null) with { Title = "<b>x</b>", Standfirst = "<script>alert(1)</script>" });
        Assert.Equal("<b>x</b>", list.Find("h3 > a").TextContent);
        Assert.Empty(list.FindAll("script, b > b, [style]"));
    }

    private IRenderedComponent<TeardownList> List(TeardownListItem item) => Render<TeardownList>(parameters => parameters.Add(list => list.Items, [item]));

    private static TeardownListItem Item(TeardownListItem.LeadPicture? lead) => new()
    {
        Id = TeardownId.New(),
        Slug = "tor-600",
        Number = 41,
        Title = "Ferrowick Tor 600",
        Brand = "Ferrowick",
        ProductName = "Tor 600",
        Model = "FT-600",
        Category = ProductCategory.PowerStation,
        Standfirst = "A claim that rests on less.",
        RevisionNumber = 2,
        State = RevisionState.Published,
        PublishedAt = new DateTimeOffset(2026, 5, 4, 12, 0, 0, TimeSpan.Zero),
        Lead = lead,
        Tally = new Dictionary<Verdict, int> { [Verdict.Unknown] = 2, [Verdict.Adequate] = 5, [Verdict.OverGuideline] = 1 },
    };
}
