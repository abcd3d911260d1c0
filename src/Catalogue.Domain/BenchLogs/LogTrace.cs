namespace Catalogue.Domain.BenchLogs;

/// <summary>
/// Draws a log of any length in a bounded number of points: neighbouring samples share a point, and whenever the points are full each two become
/// one, so that every point stands for the same number of samples.
/// </summary>
internal sealed class LogTrace
{
    /// <summary>No more points come out.</summary>
    public const int MaxPoints = 512;

    private readonly Point[] _points = new Point[MaxPoints];
    private int _count;
    private long _inLast;
    private long _samplesEach = 1;

    public void Add(double time, double volt, double ampere, double watt)
    {
        if (_count == 0 || _inLast == _samplesEach)
        {
            if (_count == MaxPoints)
                Halve();
            if (_count == 0 || _inLast == _samplesEach)
            {
                _points[_count++] = new Point(time);
                _inLast = 0;
            }
        }

        ref var point = ref _points[_count - 1];
        point.To = time;
        point.Volt.Add(volt);
        point.Ampere.Add(ampere);
        point.Watt.Add(watt);
        _inLast++;
    }

    public IReadOnlyList<BenchLogTracePoint> Complete() =>
    [
        .. _points.Take(_count).Select(point => new BenchLogTracePoint(
            point.From, point.To, point.Volt.Low, point.Volt.High, point.Ampere.Low, point.Ampere.High, point.Watt.Low, point.Watt.High)),
    ];

    private void Halve()
    {
        for (var i = 0; i < MaxPoints / 2; i++)
            _points[i] = Point.Join(_points[2 * i], _points[(2 * i) + 1]);
        _count = MaxPoints / 2;
        _samplesEach *= 2;
        _inLast = _samplesEach;
    }

    private struct Range
    {
        private double _low;
        private double _high;
        private bool _any;

        public readonly double? Low => _any ? _low : null;

        public readonly double? High => _any ? _high : null;

        public void Add(double value)
        {
            if (double.IsNaN(value))
                return;
            _low = _any ? Math.Min(_low, value) : value;
            _high = _any ? Math.Max(_high, value) : value;
            _any = true;
        }

        public static Range Join(Range one, Range other)
        {
            if (!other._any)
                return one;
            one.Add(other._low);
            one.Add(other._high);
            return one;
        }
    }

    private struct Point(double from)
    {
        public double From = from;
        public double To = from;
        public Range Volt;
        public Range Ampere;
        public Range Watt;

        public static Point Join(Point one, Point other) => new(one.From)
        {
            To = other.To,
            Volt = Range.Join(one.Volt, other.Volt),
            Ampere = Range.Join(one.Ampere, other.Ampere),
            Watt = Range.Join(one.Watt, other.Watt),
        };
    }
}
