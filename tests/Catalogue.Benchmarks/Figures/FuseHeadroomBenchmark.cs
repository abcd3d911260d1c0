using BenchmarkDotNet.Attributes;
using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Quantities;

namespace Catalogue.Benchmarks.Figures;

/// <summary>What a figure with its whole working costs beside the bare sum of its interval.</summary>
public class FuseHeadroomBenchmark
{
    private static readonly FuseHeadroom.Inputs Inputs = new()
    {
        RatedCurrent = Exactly(35),
        ParallelCount = 3,
        Sharing = Exactly(0.9),
        FunctionClass = FunctionClass.BladeFuse,
        HasRail = true,
        MaxPower = Exactly(1000),
        Efficiency = new Given(Interval.Create(0.86, 0.88, 0.9), Evidence.Measured, null),
        MinVoltage = Exactly(10.5),
    };

    /// <summary>The interval alone.</summary>
    [Benchmark(Baseline = true)]
    public double BareSum()
    {
        var needed = Inputs.MaxPower!.Interval / (Inputs.Efficiency!.Interval * Inputs.MinVoltage!.Interval);
        var allowed = Inputs.RatedCurrent!.Interval * Interval.Exactly(3) * Inputs.Sharing!.Interval * Interval.Exactly(0.75);
        return (allowed / needed).Low;
    }

    /// <summary>The figure as it is stored and shown.</summary>
    [Benchmark]
    public FigureResult WithWorking() => FuseHeadroom.Compute(Inputs, LineTable.Default);

    private static Given Exactly(double value) => new(Interval.Exactly(value), Evidence.ReadOnPart, null);
}
