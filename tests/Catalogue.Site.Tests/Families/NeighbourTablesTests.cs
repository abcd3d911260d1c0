using Bunit;
using Catalogue.Data.Families;
using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
using Catalogue.Domain.Packages;
using Catalogue.Domain.Quantities;
using Catalogue.Site.Families;

namespace Catalogue.Site.Tests.Families;

public sealed class NeighbourTablesTests : BunitContext
{
    private static readonly FamilyFacts Asked = Family("YTQ65-080", 650);

    [Fact]
    public void AlikeTable_ANameThatDiffers_IsMarkedWhereItDoesOnBothSides()
    {
        var table = Alike(Neighbours(Family("YTQ6S-080", 500)).LookAlikes);
        Assert.Equal("YTQ6S-080", table.Find("th .compared").TextContent);
        Assert.Equal("S", table.Find("th mark").TextContent);
        Assert.Equal("YTQ65-080", table.Find("td .compared").TextContent);
        Assert.Equal("5", table.Find("td mark").TextContent);
        Assert.Equal("5 here, S there, which looks like it", table.Find(".reason").TextContent);
        Assert.Equal("/families/ytq6s-080", table.Find("th a").GetAttribute("href"));
    }

    [Fact]
    public void AlikeTable_AlikeByAnotherNumber_NamesBoth()
    {
        var table = Alike(FamilyNeighbours.Of(Asked with { OtherNames = ["808-7A"] }, [Family("KPD-318", 10) with { OtherNames = ["8O8-7A"] }], new Dictionary<FamilyId, FamilyWord>()).LookAlikes);
        Assert.Equal("KPD-318", table.Find("th > a").TextContent);
        Assert.Equal("also known as 8O8-7A", table.Find("th small").TextContent.Trim());
    }

    [Fact]
    public void AlikeTable_OnlyByTheReviewersWord_SaysThatTheLettersAreNotAlike()
    {
        var other = Family("MWK-60N08", 600);
        var found = FamilyNeighbours.Of(Asked, [other], new Dictionary<FamilyId, FamilyWord> { [other.Id] = new(FamilyRelationKind.LookAlike, "<b>same logo</b>") });
        var table = Alike(found.LookAlikes);
        Assert.Equal("not alike by its letters", table.Find("td .none").TextContent);
        Assert.Equal("A reviewer marked it as a look-alike: <b>same logo</b>", table.Find(".reason").TextContent);
    }

    [Fact]
    public void AlikeTable_WhatIsNotRecorded_IsSaid() =>
        Assert.Contains("function not recorded; package not recorded", Alike(Neighbours(Family("YTQ6S-080", 500) with { FunctionClass = null, Packages = [] }).LookAlikes).Markup, StringComparison.Ordinal);

    [Fact]
    public void SecondSourceTable_WhatIsNotKnown_StandsApartFromWhatIsCovered()
    {
        var table = Sources(Neighbours(Family("QX4R065N", 700)).SecondSources);
        Assert.Equal(
            ["Same function: switch", "Same package: TO-247", "Rated voltage: 700\u00A0V where at least 650\u00A0V is needed"],
            table.FindAll("tbody td:nth-child(2) .reason").Select(reason => reason.TextContent));
        Assert.Equal(["Rated current not known of either", "On-resistance, one part not known of either"], table.FindAll(".not-known").Select(reason => reason.TextContent));
        Assert.Contains("maker not recorded", table.Find("tbody th").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void SecondSourceTable_ConfirmedThoughItFallsShort_SaysBothWithAShape()
    {
        var other = Family("MWK-60N08", 600);
        var table = Sources(FamilyNeighbours.Of(Asked, [other], new Dictionary<FamilyId, FamilyWord> { [other.Id] = new(FamilyRelationKind.SecondSource, "bench swap") }).SecondSources);
        Assert.Equal("Confirmed by a reviewer: bench swap", table.Find(".reason").TextContent);
        var against = table.Find(".reason:has(.unequal)");
        Assert.Equal("Falls short: rated voltage: 600\u00A0V where at least 650\u00A0V is needed", against.TextContent);
    }

    [Fact]
    public void KnownNames_ACodeOfSeveralMakers_SaysWhoSharesIt()
    {
        var names = Render<KnownNames>(parameters => parameters.Add(view => view.Knowledge, new FamilyKnowledgeQuery.Knowledge(
            [new("YTQ65-080T", FamilyNameKind.OrderingVariant)],
            [new(TopMarkId.New(), "A7T", "Yttrel Devices", "SOT-23", null, [new("qx4r065n", "QX4R065N", "Quorrel")]), new(TopMarkId.New(), "B2", null, null, null, [])],
            [],
            [],
            [])));
        var rows = names.FindAll("tbody tr");
        Assert.Contains("ordering variant", rows[0].TextContent, StringComparison.Ordinal);
        Assert.Contains("shared: QX4R065N of Quorrel", string.Join(' ', rows[1].TextContent.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
        Assert.Contains("maker not known", rows[2].TextContent, StringComparison.Ordinal);
        Assert.Contains("A short code alone does not identify a part", names.Markup, StringComparison.Ordinal);
        Assert.Empty(names.FindAll("[style], script"));
    }

    [Fact]
    public void KnownNames_NothingRecorded_SaysSo() =>
        Assert.Contains("No other number and no top mark is recorded", Render<KnownNames>(parameters => parameters.Add(view => view.Knowledge, new FamilyKnowledgeQuery.Knowledge([], [], [], [], []))).Markup, StringComparison.Ordinal);

    private IRenderedComponent<AlikeTable> Alike(IReadOnlyList<FamilyNeighbour> neighbours) => Render<AlikeTable>(parameters => parameters.Add(table => table.Rows, Rows(neighbours)).Add(table => table.Caption, "Look-alikes"));

    private IRenderedComponent<SecondSourceTable> Sources(IReadOnlyList<FamilyNeighbour> neighbours) => Render<SecondSourceTable>(parameters => parameters.Add(table => table.Rows, Rows(neighbours)));

    private static List<FamilyNeighboursQuery.Row> Rows(IReadOnlyList<FamilyNeighbour> neighbours) => [.. neighbours.Select(one => new FamilyNeighboursQuery.Row(one.Family.Name.ToLowerInvariant(), [], one))];

    private static FamilyNeighbours Neighbours(params FamilyFacts[] others) => FamilyNeighbours.Of(Asked, others, new Dictionary<FamilyId, FamilyWord>());

    private static FamilyFacts Family(string name, double volts) => new()
    {
        Id = FamilyId.New(),
        Name = name,
        FunctionClass = FunctionClass.Switch,
        Packages = [PackageText.Read("TO-247")],
        Ratings = [new(RatingKind.RatedVoltage, Interval.Exactly(volts))],
    };
}
