using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Rails;

namespace Catalogue.Domain.Tests.Figures;

/// <summary>Stored energy, discharge time and bus ripple: the figures of a rail with its capacitors.</summary>
public sealed class RailFiguresTests
{
    public static IEnumerable<TheoryDataRow<IReadOnlyDictionary<string, string>>> StoredExamples => WorkedExamples.Of("stored-energy.md");

    public static IEnumerable<TheoryDataRow<IReadOnlyDictionary<string, string>>> RippleExamples => WorkedExamples.Of("bus-ripple.md");

    [Theory]
    [MemberData(nameof(StoredExamples))]
    public void Stored_WorkedExample_GivesTheDocumentedNumbers(IReadOnlyDictionary<string, string> row)
    {
        var rail = Bench.Rail(max: row.Number("V"));
        if (row.ContainsKey("R"))
            rail.Known.Add(Bench.Quantity(rail.Rail, RailQuantityKind.BleedResistance, row.Number("R") * 1e3));
        var facts = Bench.Part(FunctionClass.AluminiumCapacitor, rail, [Bench.Rating(RatingKind.Capacitance, row.Number("C_one") * 1e-6)], parallel: row.Count("n"), series: row.Count("m"));
        WorkedExamples.Near(row.Number("E"), Bench.Computed(facts, StoredEnergy.Rule).Value.Nominal);
        if (row.ContainsKey("t"))
            WorkedExamples.Near(row.Number("t"), Bench.Computed(facts, DischargeTime.Rule).Value.Nominal);
        else
            Assert.Equal("bleed_resistance", Assert.Single(Bench.Unknown(facts, DischargeTime.Rule).Missing).Code);
    }

    [Theory]
    [MemberData(nameof(RippleExamples))]
    public void Ripple_WorkedExample_GivesTheDocumentedNumbers(IReadOnlyDictionary<string, string> row)
    {
        var rail = Bench.Rail(nominal: row.Number("V"));
        rail.Known.Add(Bench.Quantity(rail.Rail, RailQuantityKind.LineFrequency, row.Number("f")));
        rail.Known.Add(Bench.Quantity(rail.Rail, RailQuantityKind.MaxPower, row.Number("P")));
        var figure = Bench.Computed(Bench.Part(FunctionClass.AluminiumCapacitor, rail, [Bench.Rating(RatingKind.Capacitance, row.Number("C") * 1e-6)]), BusRipple.Rule);
        WorkedExamples.Near(row.Number("ΔV_pp"), figure.Value.Nominal);
        WorkedExamples.Near(row.Number("I_2f"), figure.Working.Steps.Single(step => step.Symbol == "I_2f").Nominal);
        Assert.Equal(Unit.Volt, figure.Unit);
    }

    [Fact]
    public void Stored_OneCapacitanceMissing_IsUnknownAndNamesThePart()
    {
        var figure = Bench.Unknown(Bench.Part(FunctionClass.AluminiumCapacitor, Bench.Rail(max: 400), []), StoredEnergy.Rule);
        Assert.Equal(("capacitance", "the capacitance of X1"), (figure.Missing[0].Code, figure.Missing[0].Words));
    }

    [Fact]
    public void Discharge_RailOfAtMost60V_HasNoSuchFigure() =>
        Assert.DoesNotContain(
            RevisionFigures.Compute(Domain.Teardowns.RevisionId.New(), Bench.Part(FunctionClass.AluminiumCapacitor, Bench.Rail(max: 58.4), [Bench.Rating(RatingKind.Capacitance, 3.3e-3)]), LineTable.Default),
            figure => figure.Rule == DischargeTime.Rule);

    [Fact]
    public void Stored_TolerancesGiven_AreCarriedThrough()
    {
        var figure = Bench.Computed(
            Bench.Part(FunctionClass.AluminiumCapacitor, Bench.Rail(max: 400), [Bench.Rating(RatingKind.Capacitance, Interval.Create(80e-6, 100e-6, 120e-6))]), StoredEnergy.Rule);
        WorkedExamples.Near(6.4, figure.Value.Low);
        WorkedExamples.Near(8, figure.Value.Nominal);
        WorkedExamples.Near(9.6, figure.Value.High);
    }
}
