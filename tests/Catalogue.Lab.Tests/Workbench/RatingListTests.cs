using Bunit;
using Catalogue.Data.Components;
using Catalogue.Domain.Components;
using Catalogue.Domain.Quantities;
using Catalogue.Lab.Workbench;

namespace Catalogue.Lab.Tests.Workbench;

public sealed class RatingListTests : LabContext
{
    [Fact]
    public void Add_TypedRating_IsHandedOnAndTheFieldEmptied()
    {
        RatingForm? added = null;
        var list = Render(form =>
        {
            added = form;
            return null;
        });

        list.Find("#r-text").Change("35 A");
        list.Find(".add button").Click();

        Assert.Equal("35 A", added?.Text);
        Assert.Equal(RatingKind.RatedCurrent, added?.Kind);
        Assert.Equal(Evidence.ReadOnPart, added?.Evidence);
        Assert.True(string.IsNullOrEmpty(list.Find("#r-text").GetAttribute("value")));
    }

    [Fact]
    public void Add_Refused_SaysWhyAndKeepsTheText()
    {
        var list = Render(_ => "Rated current is in A.");

        list.Find("#r-text").Change("35 V");
        list.Find(".add button").Click();

        Assert.Contains("Rated current is in A.", list.Find("[role=alert]").TextContent, StringComparison.Ordinal);
        Assert.Equal("35 V", list.Find("#r-text").GetAttribute("value"));
    }

    [Fact]
    public void Wanted_KindThatAFigureMisses_IsChosenBeforehand()
    {
        var list = Render(_ => null, RatingKind.CurrentSharing);

        Assert.Equal("0.8", list.Find("#r-text").GetAttribute("placeholder"));
        Assert.Equal(nameof(RatingKind.CurrentSharing), list.Find("#r-kind").GetAttribute("value"));
    }

    private IRenderedComponent<RatingList> Render(Func<RatingForm, string?> add, RatingKind? wanted = null) => Render<RatingList>(parameters => parameters
        .Add(list => list.Name, "F1")
        .Add(list => list.Ratings, [])
        .Add(list => list.Wanted, wanted)
        .Add(list => list.Add, form => Task.FromResult(add(form)))
        .Add(list => list.Remove, _ => Task.FromResult<string?>(null)));
}
