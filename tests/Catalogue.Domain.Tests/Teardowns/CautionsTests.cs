using Catalogue.Domain.BenchLogs;
using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Products;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Rails;
using Catalogue.Domain.Teardowns;
using Catalogue.Domain.Tests.Figures;

namespace Catalogue.Domain.Tests.Teardowns;

public sealed class CautionsTests
{
    [Theory]
    [InlineData(400, 470e-6, "charged_capacitor_danger")]
    [InlineData(373.352, 100e-6, "charged_capacitor_serious")]
    [InlineData(110, 1000e-6, "charged_capacitor")]
    [InlineData(58, 3300e-6, "low_voltage_high_current")]
    [InlineData(5, 100e-6, null)]
    public void For_CapacitorOnARail_IsWeighedByItsEnergy(double volts, double farads, string? key) =>
        Assert.Equal(key, Keys(Bench.Part(FunctionClass.AluminiumCapacitor, Bench.Rail(max: volts), [Bench.Rating(RatingKind.Capacitance, farads)])).FirstOrDefault());

    [Fact]
    public void For_CapacitanceUnknownAbove60V_IsRaisedNotLowered()
    {
        var caution = Assert.Single(For(Bench.Part(FunctionClass.AluminiumCapacitor, Bench.Rail(max: 100), [])));
        Assert.Equal("charged_capacitor_serious", caution.Key);
        Assert.Contains("not fully recorded", caution.Text, StringComparison.Ordinal);
        Assert.Contains("No bleed path is recorded", caution.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void For_BleedPathRecorded_SaysHowLongAndThatItIsComputed()
    {
        var rail = Bench.Rail(max: 400);
        rail.Known.Add(Bench.Quantity(rail.Rail, RailQuantityKind.BleedResistance, 220e3));
        var caution = Assert.Single(For(Bench.Part(FunctionClass.AluminiumCapacitor, rail, [Bench.Rating(RatingKind.Capacitance, 470e-6)])));
        Assert.Contains("about 200\u00A0s", caution.Text, StringComparison.Ordinal);
        Assert.Contains("computed, not measured", caution.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void For_BusOfUnknownVoltage_IsTakenAsDangerous() => Assert.Equal(["charged_capacitor_serious"], Keys(Bench.Part(FunctionClass.Switch, Bench.Rail(), [])));

    [Fact]
    public void For_PackAbove60V_DerivedFromItsCells_SaysItCannotBeTurnedOff()
    {
        var facts = Bench.Part(FunctionClass.Cell, Bench.Rail(kind: RailKind.Pack), [], series: 20) with { CellChemistry = "nmc" };
        Assert.Contains(For(facts), caution => caution.Key == "charged_capacitor_danger" && caution.Text.Contains("84\u00A0V", StringComparison.Ordinal));
    }

    [Fact]
    public void For_Mains_ComesAfterWhatIsChargedAndBeforeTheCells()
    {
        var mains = Bench.Part(FunctionClass.Switch, Bench.Rail(max: 264, mains: true), []);
        var bus = Bench.Part(FunctionClass.AluminiumCapacitor, Bench.Rail(max: 400), [Bench.Rating(RatingKind.Capacitance, 100e-6)]);
        var cells = Bench.Part(FunctionClass.Cell, Bench.Rail(max: 4.2, kind: RailKind.Pack), []);
        Assert.Equal(
            ["charged_capacitor_serious", "mains", "lithium_cells", "low_voltage_high_current"],
            Keys(new RevisionFacts([.. mains.Components, .. bus.Components, .. cells.Components], [.. bus.Ratings], [.. mains.Rails, .. bus.Rails, .. cells.Rails], [.. mains.RailQuantities, .. bus.RailQuantities, .. cells.RailQuantities])));
    }

    [Theory]
    [InlineData("surface temperature", 71, true)]
    [InlineData("surface temperature", 55, false)]
    [InlineData("temperature rise", 71, false)]
    public void For_SurfaceMeasuredHot_SaysHowHot(string subject, double degC, bool hot)
    {
        var test = new BenchTest { RevisionId = default, Id = BenchTestId.New(), Subject = subject, Value = degC, Unit = Unit.DegreeCelsius };
        Assert.Equal(hot, Keys(new RevisionFacts([], [], [], []) { Tests = [test] }).Contains("hot_part"));
    }

    [Fact]
    public void For_ChargedRail_IsNamedSoThatItsReadingsStandBesideIt_MainsIsNot()
    {
        var bus = Bench.Rail(max: 400);
        var charged = Bench.Part(FunctionClass.AluminiumCapacitor, bus, [Bench.Rating(RatingKind.Capacitance, 100e-6)]);
        var mains = Bench.Part(FunctionClass.Switch, Bench.Rail(max: 264, mains: true), []);

        var cautions = For(new RevisionFacts([.. charged.Components, .. mains.Components], [.. charged.Ratings], [.. charged.Rails, .. mains.Rails], [.. charged.RailQuantities, .. mains.RailQuantities]));

        Assert.Equal([bus.Rail.Id, null], cautions.Select(caution => caution.RailId));
    }

    [Fact]
    public void For_NothingRecorded_HasNone() => Assert.Empty(For(new RevisionFacts([], [], [], [])));

    private static IReadOnlyList<Caution> For(RevisionFacts facts) => Cautions.For(
        new Revision
        {
            Id = RevisionId.New(),
            TeardownId = TeardownId.New(),
            Number = 1,
            Title = "t",
            Brand = "b",
            ProductName = "n",
            Model = "m",
            Category = ProductCategory.Other,
            OpenedAt = default,
        },
        facts);

    private static List<string> Keys(RevisionFacts facts) => [.. For(facts).Select(caution => caution.Key)];
}
