using Catalogue.Domain.Capacitors;
using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Rails;
using Catalogue.Domain.Teardowns;
using CsCheck;

namespace Catalogue.Domain.Tests.Figures;

public sealed class BusValleyTests
{
    public static IEnumerable<TheoryDataRow<IReadOnlyDictionary<string, string>>> Examples => WorkedExamples.Of("bus-valley.md", "At one line voltage");

    public static IEnumerable<TheoryDataRow<IReadOnlyDictionary<string, string>>> RangeExamples => WorkedExamples.Of("bus-valley.md", "Over a range of mains");

    [Theory]
    [MemberData(nameof(Examples))]
    public void Compute_WorkedExample_GivesTheDocumentedNumbers(IReadOnlyDictionary<string, string> row)
    {
        var figure = Bench.Computed(Bus(Exactly("P_in"), Interval.Exactly(1), Exactly("V_line"), Exactly("f"), row.Number("C")), BusValley.Rule);
        WorkedExamples.Near(row.Number("V_valley"), figure.Value.Nominal);
        WorkedExamples.Near(row.Number("V_pk"), figure.Working.Steps.Single(step => step.Symbol == "V_pk").Nominal);
        Assert.Contains(figure.Working.Notes, note => note.StartsWith($"Ripple: {QuantityText.Of(row.Number("ripple"), Unit.Volt, 3)} peak to peak", StringComparison.Ordinal));
        Assert.Equal((Unit.Volt, Verdict.NoLine), (figure.Unit, figure.Verdict));

        Interval Exactly(string column) => Interval.Exactly(row.Number(column));
    }

    [Theory]
    [MemberData(nameof(RangeExamples))]
    public void Compute_RangeOfMains_GivesTheValleyAtEachEnd(IReadOnlyDictionary<string, string> row)
    {
        var line = Interval.Create(row.Number("V_low"), row.Number("V_nominal"), row.Number("V_high"));
        var value = Bench.Computed(Bus(Interval.Exactly(row.Number("P")), Interval.Exactly(row.Number("η")), line, Interval.Exactly(row.Number("f")), row.Number("C")), BusValley.Rule).Value;
        WorkedExamples.Near(row.Number("V_valley low"), value.Low);
        WorkedExamples.Near(row.Number("V_valley"), value.Nominal);
        WorkedExamples.Near(row.Number("V_valley high"), value.High);
    }

    [Fact]
    public void Compute_Working_NamesTheFunctionAndWhatItSolves()
    {
        var working = Bench.Computed(Bus(Interval.Exactly(70), Interval.Exactly(1), Interval.Exactly(90), Interval.Exactly(60), 120), BusValley.Rule).Working;
        var step = working.Steps[^1];
        Assert.Equal(("V_valley", "V_pk · s(k)"), (step.Symbol, step.Formula));
        Assert.Contains(working.Notes, note => note.Contains("1 − s²", StringComparison.Ordinal));
    }

    [Fact]
    public void Compute_CapacitorsThatCannotHold_IsUnknown() =>
        Assert.Equal("capacitance", Assert.Single(Bench.Unknown(Bus(Interval.Exactly(100), Interval.Exactly(1), Interval.Exactly(90), Interval.Exactly(50), 10), BusValley.Rule).Missing).Code);

    [Fact]
    public void Compute_CapacitorsThatCannotHoldAtWorst_LowIsZeroAndSaid()
    {
        var figure = Bench.Computed(Bus(Interval.Create(20, 60, 150), Interval.Exactly(1), Interval.Exactly(90), Interval.Exactly(50), 68), BusValley.Rule);
        Assert.Equal(0, figure.Value.Low);
        Assert.Contains(figure.Working.Notes, note => note.StartsWith("In the worst case the capacitors cannot hold", StringComparison.Ordinal));
    }

    [Fact]
    public void Compute_FactsMissing_NamesThem()
    {
        var rail = Bench.Rail();
        rail.Known.Add(Bench.Quantity(rail.Rail, RailQuantityKind.LineVoltage, 230));
        Assert.Equal(
            ["line_frequency", "max_power", "efficiency", "capacitance"],
            Bench.Unknown(Bench.Part(FunctionClass.AluminiumCapacitor, rail, []), BusValley.Rule).Missing.Select(missing => missing.Code));
    }

    [Theory]
    [InlineData(true, BusValley.Rule)]
    [InlineData(false, BusRipple.Rule)]
    public void RevisionFigures_BusOfKnownLineFrequency_HasTheValleyOrTheRippleNeverBoth(bool isRectified, string expected)
    {
        var rail = Bench.Rail(nominal: 325);
        rail.Known.Add(Bench.Quantity(rail.Rail, RailQuantityKind.LineFrequency, 50));
        if (isRectified)
            rail.Known.Add(Bench.Quantity(rail.Rail, RailQuantityKind.LineVoltage, 230));
        var rules = RevisionFigures.Compute(RevisionId.New(), Bench.Part(FunctionClass.AluminiumCapacitor, rail, []), LineTable.Default).Select(figure => figure.Rule);
        Assert.Equal(expected, Assert.Single(rules, rule => rule is BusValley.Rule or BusRipple.Rule));
    }

    [Fact]
    public void Compute_SpreadInputs_IsWhatTheSolverSays() =>
        Gen.Select(Gen.Double[5, 60], Gen.Double[1, 1.3], Gen.Double[90, 200], Gen.Double[1, 1.3], Gen.Double[100, 400]).Sample((power, powerSpread, volts, voltSpread, microfarads) =>
        {
            var (drawn, line, farads) = (Around(power, powerSpread), Around(volts, voltSpread), microfarads * 1e-6);
            var value = Bench.Computed(Bus(drawn, Interval.Exactly(1), line, Interval.Exactly(50), microfarads), BusValley.Rule).Value;
            var solved = Assert.IsType<Reckoning<RectifierValley>.Done>(RectifierValley.Of(drawn, line, Interval.Exactly(50), Interval.Exactly(farads))).Value.Valley;
            Assert.Equal(solved.Low, value.Low, 1e-9);
            Assert.Equal(solved.Nominal, value.Nominal, 1e-9);
            Assert.Equal(solved.High, value.High, 1e-9);

            static Interval Around(double nominal, double spread) => Interval.Create(nominal / spread, nominal, nominal * spread);
        });

    private static RevisionFacts Bus(Interval power, Interval efficiency, Interval line, Interval frequency, double microfarads)
    {
        var rail = Bench.Rail();
        foreach (var (kind, value) in new[] { (RailQuantityKind.MaxPower, power), (RailQuantityKind.Efficiency, efficiency), (RailQuantityKind.LineVoltage, line), (RailQuantityKind.LineFrequency, frequency) })
            rail.Known.Add(Bench.Quantity(rail.Rail, kind, value));
        return Bench.Part(FunctionClass.AluminiumCapacitor, rail, [Bench.Rating(RatingKind.Capacitance, microfarads * 1e-6)]);
    }
}
