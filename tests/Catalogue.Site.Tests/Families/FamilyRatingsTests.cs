using Catalogue.Data.Families;
using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
using Catalogue.Domain.Products;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Teardowns;
using Catalogue.Site.Families;

namespace Catalogue.Site.Tests.Families;

public sealed class FamilyRatingsTests
{
    [Fact]
    public void Of_SameRatingInTwoTeardowns_IsOneValueWithBothDesigns()
    {
        var row = Assert.Single(FamilyRatings.Of([Use("tor", Volts(650)), Use("lath", Volts(650))]));
        Assert.False(row.IsInConflict);
        Assert.Equal(["tor", "lath"], Assert.Single(row.Values).Designs.Select(use => use.Teardown));
    }

    [Fact]
    public void Of_DifferentRatingsUnderOneCondition_AreInConflict()
    {
        var row = Assert.Single(FamilyRatings.Of([Use("tor", Volts(650)), Use("lath", Volts(600)), Use("marl", Volts(650))]));
        Assert.True(row.IsInConflict);
        Assert.Equal([650, 600], row.Values.Select(value => value.Interval.Nominal));
    }

    [Fact]
    public void Of_ConditionWrittenDifferently_IsTheSameCondition() =>
        Assert.True(Assert.Single(FamilyRatings.Of([Use("tor", Volts(650, " 25  °c")), Use("lath", Volts(600, "25 °C"))])).IsInConflict);

    [Fact]
    public void Of_AnotherCondition_IsAnotherRating()
    {
        var rows = FamilyRatings.Of([Use("tor", Volts(650, "25 °C")), Use("lath", Volts(600, "100 °C"))]);
        Assert.Equal(2, rows.Count);
        Assert.DoesNotContain(rows, row => row.IsInConflict);
    }

    [Fact]
    public void Of_MeasuredBesideStated_IsNoConflict() =>
        Assert.False(Assert.Single(FamilyRatings.Of([Use("tor", Volts(650)), Use("lath", Volts(712, evidence: Evidence.Measured))])).IsInConflict);

    [Fact]
    public void Of_RoundedApart_IsNoConflict() =>
        Assert.False(Assert.Single(FamilyRatings.Of([Use("tor", Volts(650)), Use("lath", Volts(651))])).IsInConflict);

    [Fact]
    public void Of_ATypicalRating_StandsFirstAndNoTeardownGivesIt()
    {
        var values = Assert.Single(FamilyRatings.Of([Use("tor", Volts(650)), Use("lath", Volts(650))], [Typical(650)])).Values;
        Assert.Equal([true, false], values.Select(value => value.IsTypical));
        Assert.Empty(values[0].Designs);
    }

    [Fact]
    public void Disagreements_WithATypicalRating_NameEveryTeardownThatSaysOtherwise()
    {
        var rows = FamilyRatings.Of([Use("tor", Volts(600)), Use("lath", Volts(600)), Use("marl", Volts(650)), Use("rove", Volts(700, evidence: Evidence.Measured))], [Typical(650)]);
        var found = Assert.Single(FamilyRatings.Disagreements(rows));
        Assert.True(found.Reference.IsTypical);
        Assert.Equal(["tor", "lath"], found.Other.Designs.Select(use => use.Teardown));
    }

    [Fact]
    public void Disagreements_WithoutATypicalRating_HoldTheFewAgainstTheMost()
    {
        var found = Assert.Single(FamilyRatings.Disagreements(FamilyRatings.Of([Use("lath", Volts(600)), Use("tor", Volts(650)), Use("marl", Volts(650)), Use("stile", Volts(651))])));
        Assert.Equal((650, "lath"), (found.Reference.Interval.Nominal, Assert.Single(found.Other.Designs).Teardown));
    }

    [Fact]
    public void Disagreements_WithoutAConflict_AreNone() => Assert.Empty(FamilyRatings.Disagreements(FamilyRatings.Of([Use("tor", Volts(650)), Use("lath", Volts(651))], [Typical(650)])));

    [Fact]
    public void Gaps_NameWhatIsMissingAndHowOften()
    {
        var family = new FamilyQuery.Record("ytq65-080", "YTQ65-080", null, null, [Use("tor") with { Package = null }, Use("lath") with { Package = null, MarkingAsRead = null }, Use("marl")]);
        Assert.Equal(
            [
                "Its function class is not decided.",
                "Who makes it is not recorded with the family; what was read on parts stands under names and makers.",
                "No datasheet is linked.",
                "No rating of it is recorded, so nothing can be compared with it.",
                "1 of 3\u00A0component lines has no marking that could be read.",
                "2 of 3\u00A0component lines have no package recorded.",
            ],
            FamilyReadings.Gaps(family, new FamilyKnowledgeQuery.Knowledge([], [], [], [], []), []));
    }

    [Fact]
    public void Of_JudgementOfOneDesign_IsLeftOut() =>
        Assert.Empty(FamilyRatings.Of([Use("tor", Rating(RatingKind.CurrentSharing, 0.9)), Use("lath", Rating(RatingKind.AmbientTemperature, 60), Rating(RatingKind.Derating, 0.8))]));

    [Fact]
    public void Markings_WithOneUnread_AreLetterForLetterAndTheUnreadLast()
    {
        var readings = FamilyReadings.Markings([Use("tor") with { MarkingAsRead = null }, Use("lath") with { MarkingAsRead = "YTQ65-O8O" }, Use("marl"), Use("rove")]);
        Assert.Equal(["YTQ65-080", "YTQ65-O8O", null], readings.Select(reading => reading.Text));
    }

    [Fact]
    public void Parts_WithAQuantityThatIsNotRecorded_AreUnknown()
    {
        Assert.Equal(5, FamilyReadings.Parts([Use("tor") with { Quantity = 4 }, Use("lath") with { Quantity = 1 }]));
        Assert.Null(FamilyReadings.Parts([Use("tor") with { Quantity = 4 }, Use("lath") with { Quantity = null }]));
    }

    private static Rating Volts(double value, string? condition = null, Evidence evidence = Evidence.Datasheet) => Rating(RatingKind.RatedVoltage, value, condition, evidence);

    private static Rating Rating(RatingKind kind, double value, string? condition = null, Evidence evidence = Evidence.Datasheet) => new()
    {
        RevisionId = RevisionId.New(),
        Id = RatingId.New(),
        ComponentId = ComponentId.New(),
        Kind = kind,
        Low = value,
        Nominal = value,
        High = value,
        Condition = condition,
        Evidence = evidence,
    };

    private static FamilyRating Typical(double value) => new()
    {
        Id = FamilyRatingId.New(),
        FamilyId = FamilyId.New(),
        Kind = RatingKind.RatedVoltage,
        Low = value,
        Nominal = value,
        High = value,
        Evidence = Evidence.Datasheet,
    };

    private static FamilyQuery.Use Use(string teardown, params Rating[] ratings) => new(
        teardown, "Ferrowick", teardown, ProductCategory.Charger, null, ComponentId.New(), 0, "Main board", "switch", "Q1", "YTQ65-080", null, "Yttrel", "TO-247", 1, Evidence.ReadOnPart, ratings);
}
