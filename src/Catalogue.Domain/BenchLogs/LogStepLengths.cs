namespace Catalogue.Domain.BenchLogs;

/// <summary>
/// Adds areas up by the length of the step they lie over, in memory that does not grow: exact for the first <see cref="ExactSteps"/> steps; for
/// longer logs by classes of lengths that differ by less than 1.6 %, each class standing for the mean of its steps.
/// </summary>
/// <remarks>An even log has one class, so its median is exact however long it is.</remarks>
internal sealed class LogStepLengths
{
    /// <summary>Up to this many steps every length is kept as it is.</summary>
    public const int ExactSteps = 1024;

    private const int BitsDropped = 46;
    private const double Shortest = 1.0 / (1L << 40);
    private const double Longest = 1L << 40;

    private static readonly int FirstClass = Key(Shortest);

    private readonly List<(double Length, double Area)> _exact = [];
    private Class[]? _classes;

    public long Count { get; private set; }

    public void Add(double length, double area)
    {
        Count++;
        if (_classes is null)
        {
            if (_exact.Count < ExactSteps)
            {
                _exact.Add((length, area));
                return;
            }

            _classes = new Class[Key(Longest) - FirstClass + 1];
            foreach (var step in _exact)
                Classify(step.Length, step.Area);
        }

        Classify(length, area);
    }

    /// <summary>The median length, the lower one of two in the middle; null where there is no step.</summary>
    public double? Median()
    {
        if (Count == 0)
            return null;
        if (_classes is null)
            return _exact.Select(step => step.Length).Order().ElementAt((int)((Count - 1) / 2));
        var rank = (Count - 1) / 2;
        foreach (var group in _classes)
        {
            if (rank < group.Count)
                return group.Length / group.Count;
            rank -= group.Count;
        }

        throw new InvalidOperationException("The median lies in one of the classes.");
    }

    /// <summary>Number, length and area of the steps longer than a limit.</summary>
    public (long Count, double Length, double Area) LongerThan(double limit)
    {
        (long Count, double Length, double Area) sum = default;
        if (_classes is null)
        {
            foreach (var step in _exact.Where(step => step.Length > limit))
                sum = (sum.Count + 1, sum.Length + step.Length, sum.Area + step.Area);
            return sum;
        }

        foreach (var group in _classes)
            if (group.Count > 0 && group.Length / group.Count > limit)
                sum = (sum.Count + group.Count, sum.Length + group.Length, sum.Area + group.Area);
        return sum;
    }

    private void Classify(double length, double area)
    {
        ref var group = ref _classes![Key(Math.Clamp(length, Shortest, Longest)) - FirstClass];
        group.Count++;
        group.Length += length;
        group.Area += area;
    }

    // Exponent and the highest six bits of the fraction: 64 classes from one power of two to the next.
    private static int Key(double length) => (int)(BitConverter.DoubleToInt64Bits(length) >> BitsDropped);

    private struct Class
    {
        public long Count;
        public double Length;
        public double Area;
    }
}
