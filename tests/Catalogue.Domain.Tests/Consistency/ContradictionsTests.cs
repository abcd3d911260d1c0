using Catalogue.Domain.BenchLogs;
using Catalogue.Domain.Callouts;
using Catalogue.Domain.Components;
using Catalogue.Domain.Consistency;
using Catalogue.Domain.Families;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Photos;
using Catalogue.Domain.Products;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Rails;
using Catalogue.Domain.Teardowns;
using Catalogue.Domain.Tests.Figures;

namespace Catalogue.Domain.Tests.Consistency;

public sealed class ContradictionsTests
{
    private static readonly RevisionId Revision = RevisionId.New();

    // Four cells of 5 Ah and 3.7 V side by side: 74 Wh.
    private static readonly RevisionFacts Pack = Bench.Part(
        FunctionClass.Cell, Bench.Rail(kind: RailKind.Pack), [Bench.Rating(RatingKind.CellCapacity, 5), Bench.Rating(RatingKind.CellVoltage, 3.7)], parallel: 4) with
    { CellChemistry = "nmc37" };

    [Theory]
    [InlineData(74, null)]
    [InlineData(72.5, null)]
    [InlineData(80, ContradictionSeverity.LookAgain)]
    [InlineData(111, ContradictionSeverity.Contradiction)]
    public void PackEnergy_AgainstTheClaim_IsWeighedByTheHouseBands(double claimed, ContradictionSeverity? severity) =>
        Assert.Equal(severity, Single(Facts(Pack) with { Claims = [Claim("energy", $"{claimed}Wh", claimed, Unit.WattHour)] }, "pack_energy_against_claim")?.Severity);

    [Theory]
    [InlineData(20, 74, null)]
    [InlineData(30, 74, ContradictionSeverity.Contradiction)]
    [InlineData(21.4, 74, ContradictionSeverity.LookAgain)]
    public void ClaimedCapacity_AgainstClaimedEnergy_ComparesInWattHours(double ampereHours, double wattHours, ContradictionSeverity? severity) =>
        Assert.Equal(severity, Single(Facts(Pack) with { Claims = [Claim("capacity", "printed", ampereHours, Unit.AmpereHour), Claim("energy", "printed", wattHours, Unit.WattHour)] }, "claimed_capacity_against_energy")?.Severity);

    [Fact]
    public void ClaimedCapacity_AtThePacksVoltage_IsNoContradiction()
    {
        var series = Bench.Part(FunctionClass.Cell, Bench.Rail(kind: RailKind.Pack), [Bench.Rating(RatingKind.CellCapacity, 20), Bench.Rating(RatingKind.CellVoltage, 3.2)], series: 8) with { CellChemistry = "lfp" };
        Assert.Null(Single(Facts(series) with { Claims = [Claim("capacity", "20Ah", 20, Unit.AmpereHour), Claim("energy", "512Wh", 512, Unit.WattHour)] }, "claimed_capacity_against_energy"));
    }

    [Theory]
    [InlineData(Unit.Watt, 65, 65, null)]
    [InlineData(Unit.Watt, 65, 56, ContradictionSeverity.LookAgain)]
    [InlineData(Unit.Watt, 65, 30, ContradictionSeverity.Contradiction)]
    [InlineData(Unit.WattHour, 74, 61, null)]
    [InlineData(Unit.WattHour, 74, 40, ContradictionSeverity.Contradiction)]
    [InlineData(Unit.WattHour, 74, 75, ContradictionSeverity.LookAgain)]
    public void Claimed_AgainstMeasured_IsWeighedByKind(Unit unit, double claimed, double measured, ContradictionSeverity? severity) => Assert.Equal(
        severity,
        Single(Facts(Bench.Part(FunctionClass.OtherPart, Bench.Rail(), [])) with { Claims = [Claim("output", "printed", claimed, unit)], Tests = [Test("Output ", measured, unit)] }, "claimed_against_measured")?.Severity);

    [Fact]
    public void Claims_ThatSayTheSame_AreOneFactWithBothPlaces()
    {
        var claims = new[] { Claim("energy", "111Wh", 111, Unit.WattHour, ClaimPlace.Label), Claim("Energy ", "111 Wh", 111, Unit.WattHour, ClaimPlace.Box) };
        var found = Single(Facts(Pack) with { Claims = claims, Tests = [Test("energy", 40, Unit.WattHour)] }, "pack_energy_against_claim")!;
        Assert.Equal("The claimed energy (label and box) is 150 % of what the cells hold.", found.Words);
        Assert.Equal(("111Wh / 111 Wh", "label and box", claims[0].Id.Value), (found.One.Says, found.One.Source, found.One.RecordId!.Value));
        Assert.Equal("energy: measured is 36 % of what is claimed (label and box).", Single(Facts(Pack) with { Claims = claims, Tests = [Test("energy", 40, Unit.WattHour)] }, "claimed_against_measured")!.Words);
    }

    [Fact]
    public void Claims_ThatDiffer_HaveWordsOfTheirOwn()
    {
        var facts = Facts(Pack) with
        {
            Claims = [Claim("energy", "111Wh", 111, Unit.WattHour, ClaimPlace.Label), Claim("energy", "111.02Wh", 111.02, Unit.WattHour, ClaimPlace.Box), Claim("capacity", "40Ah", 40, Unit.AmpereHour, ClaimPlace.WebPage)],
            Tests = [Test("energy", 40, Unit.WattHour)],
        };
        var words = Contradictions.Find(facts).Select(found => found.Words).ToList();
        Assert.True(words.Count >= 6);
        Assert.Equal(words.Count, words.Distinct().Count());
    }

    [Theory]
    [InlineData(12, "12000mAh (5V 3A)", null)]
    [InlineData(14.5, "rated 14500mAh 5V", ContradictionSeverity.LookAgain)]
    [InlineData(15, "15Ah at 5 V", ContradictionSeverity.Contradiction)]
    [InlineData(5, "5Ah (5V)", ContradictionSeverity.LookAgain)]
    [InlineData(15, "15Ah", null)]
    [InlineData(15, "15Ah at 5 V or 9 V", null)]
    public void RatedOutput_AgainstTheEnergy_IsWeighedByTheHouseBands(double ampereHours, string printed, ContradictionSeverity? severity)
    {
        var facts = Facts(Bench.Part(FunctionClass.OtherPart, Bench.Rail(), []));
        var output = Claim("rated output", printed, ampereHours, Unit.AmpereHour);
        Assert.Equal(severity, Single(facts with { Claims = [output, Claim("energy", "74Wh", 74, Unit.WattHour)] }, "output_against_energy")?.Severity);
        Assert.Equal(severity, Single(Facts(Pack) with { Claims = [output] }, "output_against_energy")?.Severity);
    }

    [Fact]
    public void RatedOutput_NoEnergyClaimed_IsHeldAgainstTheCapacityAtOneCell()
    {
        // Cells of unknown capacity: nothing is computed of the pack, 20 Ah at 3.7 V are claimed.
        var facts = Facts(Bench.Part(FunctionClass.Cell, Bench.Rail(kind: RailKind.Pack), [Bench.Rating(RatingKind.CellVoltage, 3.7)])) with
        {
            Claims = [Claim("capacity", "20000mAh", 20, Unit.AmpereHour), Claim("rated output", "15Ah at 5V", 15, Unit.AmpereHour, ClaimPlace.Box)],
        };
        var found = Single(facts, "output_against_energy")!;
        Assert.Equal("The claimed rated output (box) is 101 % of the claimed capacity (label) at one cell's voltage: more comes out than goes in.", found.Words);
        Assert.Equal(("box: 75\u00A0Wh at 5\u00A0V", "label: 74\u00A0Wh at 3.7\u00A0V"), (found.One.Source, found.Other.Source));
        Assert.Null(Single(facts, "claimed_capacity_against_energy"));
    }

    [Fact]
    public void RatedOutput_WithinTheSpreadOfTheCells_IsOnlyWorthALook()
    {
        var pack = Bench.Part(FunctionClass.Cell, Bench.Rail(kind: RailKind.Pack), [Bench.Rating(RatingKind.CellCapacity, Interval.Create(4.8, 5, 5.4)), Bench.Rating(RatingKind.CellVoltage, 3.7)], parallel: 4);
        Assert.Equal(ContradictionSeverity.LookAgain, Single(Facts(pack) with { Claims = [Claim("rated output", "15Ah at 5V", 15, Unit.AmpereHour)] }, "output_against_energy")!.Severity);
    }

    [Fact]
    public void Efficiency_AboveOne_IsAContradiction()
    {
        var found = Single(Facts(Pack) with { Tests = [Test("efficiency at 5 V", 1.04, Unit.Ratio)] }, "efficiency_above_one");
        Assert.Equal(("1.04", "1.00"), (found!.One.Says, found.Other.Says));
        Assert.Null(Single(Facts(Pack) with { Tests = [Test("efficiency at 5 V", 0.93, Unit.Ratio)] }, "efficiency_above_one"));
    }

    [Fact]
    public void Energy_MeasuredAboveWhatTheCellsHold_IsAContradiction() =>
        Assert.Equal(ContradictionSeverity.Contradiction, Single(Facts(Pack) with { Tests = [Test("energy", 80, Unit.WattHour)] }, "energy_above_pack")!.Severity);

    [Theory]
    [InlineData(4, null)]
    [InlineData(3, ContradictionSeverity.Contradiction)]
    public void Cells_CountedOtherwiseThanArranged_AreAContradiction(int quantity, ContradictionSeverity? severity)
    {
        Pack.Components[0].Quantity = quantity;
        Assert.Equal(severity, Single(Facts(Pack), "cells_against_arrangement")?.Severity);
    }

    [Theory]
    [InlineData(4, 4, null)]
    [InlineData(8, 4, null)]
    [InlineData(6, 4, ContradictionSeverity.LookAgain)]
    public void Quantity_ThatIsNoMultipleOfTheArrangement_IsWorthALook(int quantity, int parallel, ContradictionSeverity? severity)
    {
        var facts = Bench.Part(FunctionClass.Switch, Bench.Rail(), [], parallel: parallel);
        facts.Components[0].Quantity = quantity;
        Assert.Equal(severity, Single(Facts(facts), "quantity_against_arrangement")?.Severity);
    }

    [Fact]
    public void Designators_OtherThanTheQuantity_AreWorthALook()
    {
        var facts = Bench.Part(FunctionClass.Resistor, Bench.Rail(), []);
        (facts.Components[0].Quantity, facts.Components[0].Designators, facts.Components[0].DesignatorList) = (2, "R1-R3", ["R1", "R2", "R3"]);
        Assert.Equal("3 designators, a quantity of 2.", Single(Facts(facts), "designators_against_quantity")!.Words.Split(": ")[1]);
    }

    [Fact]
    public void Callouts_MoreOnOnePhotoThanParts_AreAContradiction()
    {
        var facts = Bench.Part(FunctionClass.Resistor, Bench.Rail(), []);
        facts.Components[0].Quantity = 2;
        var photo = PhotoId.New();
        Callout[] three = [At(photo, 1), At(photo, 2), At(photo, 3)];
        Assert.Equal(ContradictionSeverity.Contradiction, Single(Facts(facts) with { Callouts = three }, "callouts_against_quantity")!.Severity);
        Assert.Null(Single(Facts(facts) with { Callouts = [At(photo, 1), At(photo, 2), At(PhotoId.New(), 3)] }, "callouts_against_quantity"));

        Callout At(PhotoId on, int number) => new() { RevisionId = Revision, Id = CalloutId.New(), PhotoId = on, Number = number, X = 0.1, Y = 0.1, ComponentId = facts.Components[0].Id };
    }

    [Fact]
    public void Ratings_OfOneFamily_ThatDiffer_AreWorthALook()
    {
        var family = FamilyId.New();
        var one = Bench.Part(FunctionClass.Switch, Bench.Rail(), [Bench.Rating(RatingKind.RatedVoltage, 650)]);
        var other = Bench.Part(FunctionClass.Switch, Bench.Rail(), [Bench.Rating(RatingKind.RatedVoltage, 600)]);
        (one.Components[0].FamilyId, other.Components[0].FamilyId) = (family, family);
        var both = one with { Components = [.. one.Components, .. other.Components], Ratings = [.. one.Ratings, .. other.Ratings] };
        Assert.NotNull(Single(Facts(both), "rating_within_family"));
        var elsewhere = Facts(one) with { FamilyRatings = [new ConsistencyFacts.FamilyRating(family, RatingKind.RatedVoltage, 600, 600, 2)] };
        Assert.Equal("2 published teardowns", Single(elsewhere, "rating_against_family")!.Other.Source);
        Assert.Null(Single(Facts(one) with { FamilyRatings = [new ConsistencyFacts.FamilyRating(family, RatingKind.RatedVoltage, 600, 655, 2)] }, "rating_against_family"));
    }

    [Fact]
    public void Rail_FullVoltageAboveWhatItsCellsGive_IsAContradiction()
    {
        var facts = Bench.Part(FunctionClass.Cell, Bench.Rail(max: 21, kind: RailKind.Pack), [], series: 4) with { CellChemistry = "nmc" };
        Assert.Equal(ContradictionSeverity.Contradiction, Single(Facts(facts), "rail_against_derived")!.Severity);
    }

    [Fact]
    public void Margin_BeyondItsLine_StandsAmongThem()
    {
        var facts = Bench.Part(FunctionClass.BladeFuse, Bench.Rail(max: 58.4), [Bench.Rating(RatingKind.RatedVoltage, 32)]);
        Assert.Equal(ContradictionSeverity.Contradiction, Single(Facts(facts), "margin_beyond_line")!.Severity);
    }

    [Fact]
    public void Find_NothingRecorded_FindsNothing() => Assert.Empty(Contradictions.Find(Facts(new RevisionFacts([], [], [], []))));

    private static ConsistencyFacts Facts(RevisionFacts facts) => new(facts, [], [], [], RevisionFigures.Compute(Revision, facts, LineTable.Default), []);

    private static Contradiction? Single(ConsistencyFacts facts, string code) => Contradictions.Find(facts).SingleOrDefault(found => found.Code == code);

    private static Claim Claim(string subject, string printed, double value, Unit unit, ClaimPlace place = ClaimPlace.Label) =>
        new() { RevisionId = Revision, Id = ClaimId.New(), Subject = subject, AsPrinted = printed, Value = value, Unit = unit, Place = place };

    private static BenchTest Test(string subject, double value, Unit unit) => new() { RevisionId = Revision, Id = BenchTestId.New(), Subject = subject, Value = value, Unit = unit };
}
