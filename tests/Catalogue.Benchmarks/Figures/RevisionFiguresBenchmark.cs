using BenchmarkDotNet.Attributes;
using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Rails;
using Catalogue.Domain.Teardowns;

namespace Catalogue.Benchmarks.Figures;

/// <summary>All figures of a revision of 150 components, beside reading its facts once.</summary>
public class RevisionFiguresBenchmark
{
    private static readonly FunctionClass[] Classes =
        [FunctionClass.Switch, FunctionClass.Rectifier, FunctionClass.AluminiumCapacitor, FunctionClass.CeramicCapacitor, FunctionClass.BladeFuse, FunctionClass.Connector, FunctionClass.Resistor, FunctionClass.Cell];

    private readonly RevisionId _revision = RevisionId.New();
    private RevisionFacts _facts = null!;

    /// <summary>A plausible teardown: six rails, 150 components, six ratings each.</summary>
    [GlobalSetup]
    public void Setup()
    {
        var rails = Enumerable.Range(0, 6).Select(i => new Rail { RevisionId = _revision, Id = RailId.New(), Name = $"rail {i}", Kind = i == 0 ? RailKind.Pack : RailKind.DcBus }).ToList();
        var known = rails.SelectMany(rail => new (RailQuantityKind Kind, double Value)[]
        {
            (RailQuantityKind.MinVoltage, 40), (RailQuantityKind.NominalVoltage, 48), (RailQuantityKind.MaxVoltage, 58), (RailQuantityKind.MaxPower, 600), (RailQuantityKind.Efficiency, 0.9), (RailQuantityKind.LineFrequency, 50),
        }.Select(of => new RailQuantity { RevisionId = _revision, Id = RailQuantityId.New(), RailId = rail.Id, Kind = of.Kind, Low = of.Value * 0.98, Nominal = of.Value, High = of.Value * 1.02 })).ToList();
        var components = Enumerable.Range(0, 150).Select(i => new BoardComponent
        {
            RevisionId = _revision,
            Id = ComponentId.New(),
            BoardId = default,
            Designators = $"X{i}",
            FunctionClass = Classes[i % Classes.Length],
            RailId = rails[i % 6].Id,
            CircuitPosition = CircuitPosition.InLine,
            ParallelCount = 1 + (i % 3),
        }).ToList();
        var ratings = components.SelectMany(component => new (RatingKind Kind, double Value)[]
        {
            (RatingKind.RatedVoltage, 80), (RatingKind.RatedCurrent, 60), (RatingKind.Capacitance, 1e-4), (RatingKind.OnResistance, 0.003), (RatingKind.CurrentSharing, 0.9), (RatingKind.TemperatureFactor, 1.6),
        }.Select(of => new Rating { RevisionId = _revision, Id = RatingId.New(), ComponentId = component.Id, Kind = of.Kind, Low = of.Value * 0.95, Nominal = of.Value, High = of.Value })).ToList();
        _facts = new RevisionFacts(components, ratings, rails, known) { CellChemistry = "nmc" };
    }

    /// <summary>Arranging the facts by rail, without computing anything.</summary>
    [Benchmark(Baseline = true)]
    public int FactsAlone() => _facts.ByRail().Count;

    /// <summary>Every figure with its working.</summary>
    [Benchmark]
    public int AllFigures() => RevisionFigures.Compute(_revision, _facts, LineTable.Default).Count;
}
