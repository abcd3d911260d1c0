namespace Catalogue.Domain.BenchLogs;

/// <summary>Sums up the parts of a recording that the log numbers or names.</summary>
/// <param name="column">The column with the number or name, from 0; -1 where there is none.</param>
/// <param name="decode">Makes text of a cell.</param>
internal sealed class LogSegments(int column, Func<ReadOnlySpan<byte>, string> decode)
{
    /// <summary>No more parts are kept; all are counted.</summary>
    public const int MaxSegments = 1000;

    private const int LongestName = 64;

    private readonly List<BenchLogSegment> _segments = [];
    private readonly byte[] _name = new byte[LongestName];
    private int _nameLength = -1;
    private long _samples;
    private bool _goesBack;
    private double _from = double.NaN;
    private double _to = double.NaN;
    private LogTrapezoid _charge = new();
    private LogTrapezoid _energy = new();

    public long Count { get; private set; }

    public void Add(LogCells cells, ReadOnlySpan<byte> line, double time, bool goesBack, double ampere, double watt)
    {
        if (column < 0)
            return;
        var name = cells.Cell(line, column);
        name = name[..Math.Min(name.Length, LongestName)];
        if (_nameLength != name.Length || !name.SequenceEqual(_name.AsSpan(0, name.Length)))
        {
            End();
            name.CopyTo(_name);
            _nameLength = name.Length;
            Count++;
        }
        else
        {
            _goesBack |= goesBack;
        }

        _samples++;
        if (double.IsNaN(_from))
            _from = time;
        _charge.Add(time, ampere, out _, out _);
        _energy.Add(time, watt, out _, out _);
        _to = time;
    }

    public IReadOnlyList<BenchLogSegment> Complete()
    {
        End();
        return _segments;
    }

    private void End()
    {
        if (_samples > 0 && _segments.Count < MaxSegments)
        {
            var known = !_goesBack && _to > _from;
            _segments.Add(new BenchLogSegment(
                decode(_name.AsSpan(0, _nameLength)), _samples, known ? _to - _from : null, known && _charge.HasSteps ? _charge.Total / 3600 : null, known && _energy.HasSteps ? _energy.Total / 3600 : null));
        }

        (_samples, _goesBack, _from, _to, _charge, _energy) = (0, false, double.NaN, double.NaN, new(), new());
    }
}
