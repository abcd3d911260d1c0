using Bunit;
using Catalogue.Data.Families;
using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Teardowns;
using Catalogue.Lab.Families;

namespace Catalogue.Lab.Tests.Families;

public sealed class RatingsAcrossTests : LabContext
{
    [Fact]
    public void RatingsAcross_TwoTeardownsFarApart_AreMarkedOnBothLines()
    {
        var page = Of([Use("Tor 600", 40), Use("Lath 65", 60)]);

        var lines = page.FindAll("tbody tr");
        Assert.Equal(["40\u00a0V", "60\u00a0V"], lines.Select(line => line.QuerySelector("td.mono")!.TextContent));
        Assert.All(lines, line => Assert.Equal("contradiction", line.QuerySelector("b")!.TextContent));
    }

    [Theory]
    [InlineData(40.5, Evidence.Datasheet)]
    [InlineData(60, Evidence.Measured)]
    [InlineData(60, Evidence.Guess)]
    public void RatingsAcross_ValuesThatAreAlikeOrStateNothing_AreNoContradiction(double volts, Evidence evidence) =>
        Assert.Empty(Of([Use("Tor 600", 40), Use("Lath 65", volts, evidence)]).FindAll("b"));

    [Fact]
    public void RatingsAcross_UnderAnotherCondition_AreRowsOfTheirOwn()
    {
        var page = Of([Use("Tor 600", 40), Use("Lath 65", 60, condition: "at 25 °C")]);

        Assert.Equal(2, page.FindAll("tbody").Count);
        Assert.Empty(page.FindAll("b"));
    }

    [Fact]
    public void RatingsAcross_TheTypicalRating_IsHeldAgainstTeardowns()
    {
        var typical = new FamilyRating { Id = FamilyRatingId.New(), FamilyId = FamilyId.New(), Kind = RatingKind.RatedVoltage, Low = 60, Nominal = 60, High = 60, Evidence = Evidence.Datasheet };
        var page = Of([Use("Tor 600", 40), Use("Tor 600", 40)], typical);

        Assert.Equal(["Tor 600", "typical rating"], page.FindAll("tbody tr td:last-child").Select(cell => cell.TextContent));
        Assert.Equal(2, page.FindAll("b").Count);
    }

    [Fact]
    public void RatingsAcross_Nothing_SaysSo() => Assert.Contains("No teardown states a rating", Of([]).Markup, StringComparison.Ordinal);

    [Fact]
    public void MarkingsSeen_SpellingsOfSeveralTeardowns_AreCountedTheMostSeenFirst()
    {
        var uses = new[] { Use("Tor 600", 40, marking: "QX4R\n2317"), Use("Lath 65", 40, marking: "QX4R"), Use("Drover", 40, marking: "QX4R"), Use("Tarn", 40) };
        var rows = Render<MarkingsSeen>(parameters => parameters.Add(list => list.Uses, uses)).FindAll("li");

        Assert.Equal(["QX4R", "QX4R\n2317"], rows.Select(row => row.QuerySelector(".mono")!.TextContent));
        Assert.Equal("2 teardowns, TO-252", rows[0].QuerySelectorAll("span")[1].TextContent);
    }

    private IRenderedComponent<RatingsAcross> Of(IReadOnlyList<FamilyRecordQuery.Use> uses, params FamilyRating[] typical) =>
        Render<RatingsAcross>(parameters => parameters.Add(table => table.Uses, uses).Add(table => table.Typical, typical));

    private static FamilyRecordQuery.Use Use(string product, double volts, Evidence evidence = Evidence.ReadOnPart, string? condition = null, string? marking = null)
    {
        var component = new BoardComponent { RevisionId = Records.Revision, Id = ComponentId.New(), BoardId = Records.Board, MarkingAsRead = marking, Package = "TO-252" };
        return new FamilyRecordQuery.Use(product, product, 1, RevisionState.Published, "main", component, [new Rating
        {
            RevisionId = component.RevisionId, Id = RatingId.New(), ComponentId = component.Id, Kind = RatingKind.RatedVoltage, Low = volts, Nominal = volts, High = volts, Condition = condition, Evidence = evidence,
        }]);
    }
}
