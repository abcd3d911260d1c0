namespace Catalogue.Domain.BenchLogs;

/// <summary>Lowest, highest and mean of values as they come.</summary>
internal sealed class LogTally
{
    private double _minimum = double.PositiveInfinity;
    private double _maximum = double.NegativeInfinity;
    private double _mean;

    public long Count { get; private set; }

    public long Overloads { get; set; }

    public double Minimum => _minimum;

    public double Maximum => _maximum;

    public void Add(double value)
    {
        Count++;
        _minimum = Math.Min(_minimum, value);
        _maximum = Math.Max(_maximum, value);
        _mean += (value - _mean) / Count;
    }

    /// <summary>What came together; null where nothing did.</summary>
    public BenchLogSpan? Span() => (Count, Overloads) switch
    {
        (0, 0) => null,
        (0, _) => new BenchLogSpan(0, Overloads, null, null, null),
        _ => new BenchLogSpan(Count, Overloads, _minimum, _maximum, _mean),
    };
}
