namespace Catalogue.Domain.BenchLogs;

/// <summary>Reads a column of values whose unit stands in another column and may change from row to row.</summary>
/// <param name="valueColumn">The values, from 0.</param>
/// <param name="unitColumn">Their units, from 0.</param>
/// <param name="decimalMark">The mark of fractions.</param>
/// <param name="decode">Makes text of a cell.</param>
internal sealed class LogAutoRange(int valueColumn, int unitColumn, byte decimalMark, Func<ReadOnlySpan<byte>, string> decode)
{
    private const int LongestUnit = 24;

    private readonly LogTally[] _tallies = [.. Enum.GetValues<LogQuantity>().Select(_ => new LogTally())];
    private readonly byte[] _unit = new byte[LongestUnit];
    private int _unitLength = -1;
    private LogUnit? _meaning;

    public long Unusable { get; private set; }

    public LogTally Of(LogQuantity quantity) => _tallies[(int)quantity];

    /// <summary>True when the column measures now one thing and now another, so that nothing can be summed up.</summary>
    public bool IsMixed => _tallies.Count(tally => tally.Count + tally.Overloads > 0) > 1;

    public void Read(LogCells cells, ReadOnlySpan<byte> line, ref double volt, ref double ampere, ref double watt)
    {
        var unit = UnitOf(cells.Cell(line, unitColumn));
        var kind = LogNumber.Read(cells.Cell(line, valueColumn), decimalMark, out var number, out var own);
        if (unit is null || !own.IsEmpty)
        {
            Unusable += kind is LogCellKind.Empty ? 0 : 1;
            return;
        }

        var tally = _tallies[(int)unit.Quantity];
        var value = unit.ToBase(number);
        if (kind == LogCellKind.Overload)
            tally.Overloads++;
        else if (kind != LogCellKind.Number || !(Math.Abs(value) <= LogMeter.Largest))
            Unusable++;
        else
            Give(tally, unit.Quantity, value, ref volt, ref ampere, ref watt);
    }

    private static void Give(LogTally tally, LogQuantity quantity, double value, ref double volt, ref double ampere, ref double watt)
    {
        tally.Add(value);
        switch (quantity)
        {
            case LogQuantity.Voltage:
                volt = value;
                break;
            case LogQuantity.Current:
                ampere = value;
                break;
            case LogQuantity.Power:
                watt = value;
                break;
        }
    }

    private LogUnit? UnitOf(ReadOnlySpan<byte> cell)
    {
        if (cell.Length > LongestUnit)
            return null;
        if (_unitLength != cell.Length || !cell.SequenceEqual(_unit.AsSpan(0, cell.Length)))
        {
            cell.CopyTo(_unit);
            _unitLength = cell.Length;
            _meaning = LogUnit.Find(decode(cell));
        }

        return _meaning;
    }
}
