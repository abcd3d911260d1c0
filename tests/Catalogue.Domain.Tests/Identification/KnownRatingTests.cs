using Catalogue.Domain.Components;
using Catalogue.Domain.Identification;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Teardowns;

namespace Catalogue.Domain.Tests.Identification;

public sealed class KnownRatingTests
{
    private static readonly BoardComponent Part = new() { RevisionId = RevisionId.New(), Id = ComponentId.New(), BoardId = BoardId.New() };

    [Fact]
    public void Choose_ATypicalRating_SettlesItsKind()
    {
        var chosen = KnownRating.Choose([Known(RatingKind.RatedVoltage, 40, Evidence.Datasheet)], [Known(RatingKind.RatedVoltage, 30), Known(RatingKind.RatedCurrent, 20)]);
        Assert.Equal([(RatingKind.RatedCurrent, 20), (RatingKind.RatedVoltage, 40)], chosen.Select(rating => (rating.Kind, rating.Value.Nominal)));
    }

    [Fact]
    public void Choose_TeardownsThatDisagree_LeaveTheKindOut() =>
        Assert.Equal(RatingKind.RatedCurrent, Assert.Single(KnownRating.Choose([], [Known(RatingKind.RatedVoltage, 30), Known(RatingKind.RatedVoltage, 40), Known(RatingKind.RatedCurrent, 20)])).Kind);

    [Fact]
    public void Choose_OtherConditions_AreNoDisagreement() =>
        Assert.Equal(2, KnownRating.Choose([], [Known(RatingKind.OnResistance, 0.004, condition: "10 V"), Known(RatingKind.OnResistance, 0.006, condition: "4.5 V")]).Count);

    [Fact]
    public void Choose_TheSameValueTwice_ComesOnceWithTheStrongestEvidence()
    {
        var chosen = Assert.Single(KnownRating.Choose([], [Known(RatingKind.RatedVoltage, 40, Evidence.Datasheet), Known(RatingKind.RatedVoltage, 40)]));
        Assert.Equal(Evidence.ReadOnPart, chosen.Evidence);
    }

    [Theory]
    [InlineData(RatingKind.RatedVoltage, Evidence.Measured)]
    [InlineData(RatingKind.RatedVoltage, Evidence.Guess)]
    [InlineData(RatingKind.RatedVoltage, Evidence.Inferred)]
    [InlineData(RatingKind.PeakVoltage, Evidence.ReadOnPart)]
    [InlineData(RatingKind.AmbientTemperature, Evidence.Datasheet)]
    [InlineData(RatingKind.Derating, Evidence.Datasheet)]
    public void Choose_WhatBindsNoOtherPart_IsLeftOut(RatingKind kind, Evidence evidence) => Assert.Empty(KnownRating.Choose([], [Known(kind, 0.5, evidence)]));

    [Fact]
    public void Missing_AKindThatThePartHas_IsNotDoubled()
    {
        var own = Known(RatingKind.RatedVoltageAc, 250).Of(Part);
        var missing = KnownRating.Missing([Known(RatingKind.RatedVoltage, 230, condition: "250 V~"), Known(RatingKind.RatedVoltage, 400), Known(RatingKind.RatedCurrent, 10)], [own]);
        Assert.Equal([400, 10], missing.Select(rating => rating.Value.Nominal));
    }

    [Fact]
    public void Of_APart_KeepsEvidenceConditionAndSource()
    {
        var rating = Known(RatingKind.RatedVoltage, 40, Evidence.Datasheet, "25 °C").Of(Part);
        Assert.Equal((Part.Id, Part.RevisionId, 40, Evidence.Datasheet, "25 °C", "typical of family 808-7A"), (rating.ComponentId, rating.RevisionId, rating.Nominal, rating.Evidence, rating.Condition, rating.Source));
    }

    private static KnownRating Known(RatingKind kind, double value, Evidence evidence = Evidence.ReadOnPart, string? condition = null) =>
        new(kind, Interval.Exactly(value), condition, evidence, "typical of family 808-7A");
}
