using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Teardowns;

namespace Catalogue.Domain.Tests.Figures;

public sealed class AluminiumLifeTests
{
    private const double Hour = 3600;

    public static IEnumerable<TheoryDataRow<IReadOnlyDictionary<string, string>>> Examples => WorkedExamples.Of("aluminium-life.md");

    [Theory]
    [MemberData(nameof(Examples))]
    public void Compute_WorkedExample_GivesTheDocumentedNumbers(IReadOnlyDictionary<string, string> row)
    {
        var figure = Bench.Computed(Capacitor(row.Number("L_0"), row.Number("T_rated"), Interval.Exactly(row.Number("T_part"))), AluminiumLife.Rule);
        WorkedExamples.Near(row.Number("L") * Hour, figure.Value.Nominal);
        Assert.Equal((Unit.Second, Verdict.NoLine), (figure.Unit, figure.Verdict));
    }

    [Fact]
    public void Compute_Working_IsInHoursAndSaysTheRule()
    {
        var figure = Bench.Computed(Capacitor(2000, 105, Interval.Create(80, 85, 90)), AluminiumLife.Rule);
        var step = Assert.Single(figure.Working.Steps);
        Assert.Equal("L_0 · 2^((T_rated − T_part) / 10\u00A0°C)", step.Formula);
        Assert.Equal("2000\u00A0h × 2^((105\u00A0°C − 85\u00A0°C) / 10\u00A0°C)", step.InNumbers);
        Assert.Equal("5657 / 8000 / 11310\u00A0h", QuantityText.Of(figure.Value, Unit.Second));
        Assert.Contains(figure.Working.Notes, note => note.Contains("rule of ten degrees", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(RatingKind.RatedLife)]
    [InlineData(RatingKind.MaxTemperature)]
    [InlineData(RatingKind.PartTemperature)]
    public void Compute_OneFactMissing_HasNoSuchFigure(RatingKind missing)
    {
        var facts = Capacitor(2000, 105, Interval.Exactly(70));
        AssertNone(facts with { Ratings = [.. facts.Ratings.Where(rating => rating.Kind != missing)] });
    }

    [Fact]
    public void Compute_TemperatureOnlyGuessed_HasNoSuchFigure()
    {
        var facts = Capacitor(2000, 105, Interval.Exactly(70));
        foreach (var rating in facts.Ratings)
            rating.Evidence = Evidence.Inferred;
        AssertNone(facts);
    }

    [Fact]
    public void Compute_PolymerPart_HasNoSuchFigure()
    {
        var facts = Capacitor(2000, 105, Interval.Exactly(70));
        facts.Components[0].Package = "Polymer can, Ø 8 mm";
        AssertNone(facts);
    }

    [Fact]
    public void Compute_TemperatureOutOfReach_IsUnknown() =>
        Assert.Equal("part_temperature", Assert.Single(Bench.Unknown(Capacitor(2000, 105, Interval.Exactly(900)), AluminiumLife.Rule).Missing).Code);

    private static void AssertNone(RevisionFacts facts) =>
        Assert.DoesNotContain(RevisionFigures.Compute(RevisionId.New(), facts, LineTable.Default), figure => figure.Rule == AluminiumLife.Rule);

    private static RevisionFacts Capacitor(double hours, double rated, Interval measured) => Bench.Part(
        FunctionClass.AluminiumCapacitor,
        Bench.Rail(max: 25),
        [Bench.Rating(RatingKind.RatedLife, hours * Hour), Bench.Rating(RatingKind.MaxTemperature, rated), Bench.Rating(RatingKind.PartTemperature, Evidence.Measured, measured)]);
}
