using Catalogue.Domain.BenchLogs;
using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Isolation;
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

    [Theory]
    [InlineData(RailKind.LowVoltage, true, true)]
    [InlineData(RailKind.LowVoltage, false, false)]
    [InlineData(RailKind.DcBus, true, false)]
    public void For_MainsAndAReachableRail_OnOneBoardHaveABarrier(RailKind kind, bool onOneBoard, bool isThere)
    {
        var mains = Bench.Part(FunctionClass.Switch, Bench.Rail(max: 264, mains: true), []);
        var other = Bench.Part(FunctionClass.Switch, Bench.Rail(max: 20, kind: kind), []);
        if (onOneBoard)
            other.Components[0].BoardId = mains.Components[0].BoardId;
        var found = For(Joined(mains, other)).SingleOrDefault(caution => caution.Key == "isolation_barrier");
        Assert.Equal(isThere, found is not null);
        if (found is null)
            return;
        Assert.StartsWith("bus and bus meet on one board. No path across the insulation between them was measured.", found.Text, StringComparison.Ordinal);
        Assert.EndsWith("the product standard, local codes and people licensed under them decide.", found.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void For_RailOfAPort_IsReachableWhateverItsKind()
    {
        var mains = Bench.Part(FunctionClass.Switch, Bench.Rail(max: 264, mains: true), []);
        var output = Bench.Part(FunctionClass.Switch, Bench.Rail(max: 20, kind: RailKind.Other), []);
        (output.Components[0].BoardId, output.Rails[0].PortId) = (mains.Components[0].BoardId, PortId.New());
        Assert.Contains("isolation_barrier", Keys(Joined(mains, output)));
    }

    [Theory]
    [InlineData(InsulationKind.Reinforced, "pads of U3", "pads of U4", true)]
    [InlineData(InsulationKind.Functional, "primary pads of U3", "secondary pads of U3", false)]
    [InlineData(null, "primary pads of U3", "Output pads of U3", true)]
    [InlineData(null, "secondary side of T1", "mains pin", true)]
    [InlineData(null, "pad 1", "pad 2", false)]
    public void For_MeasuredPath_IsCautionedAgainstWhereItCrossesABarrier(InsulationKind? insulation, string from, string to, bool isThere)
    {
        var path = new MeasuredPath { RevisionId = default, Id = MeasuredPathId.New(), From = from, To = to, Insulation = insulation };
        var found = For(new RevisionFacts([], [], [], []) { IsolationPaths = [path] });
        Assert.Equal(isThere ? [$"The path from {from} to {to} was measured across it."] : [], found.Select(caution => caution.Text.Split(" A distance")[0]));
    }

    [Fact]
    public void For_SeveralPaths_AreCounted()
    {
        var paths = Enumerable.Range(0, 3).Select(_ => new MeasuredPath { RevisionId = default, Id = MeasuredPathId.New(), From = "a", To = "b", Insulation = InsulationKind.Basic }).ToList();
        Assert.StartsWith("3 paths were measured across it.", Assert.Single(For(new RevisionFacts([], [], [], []) { IsolationPaths = paths })).Text, StringComparison.Ordinal);
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

    private static RevisionFacts Joined(RevisionFacts one, RevisionFacts other) =>
        new([.. one.Components, .. other.Components], [.. one.Ratings, .. other.Ratings], [.. one.Rails, .. other.Rails], [.. one.RailQuantities, .. other.RailQuantities]);

    private static List<string> Keys(RevisionFacts facts) => [.. For(facts).Select(caution => caution.Key)];
}
