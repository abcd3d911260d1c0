using System.Text;

namespace Catalogue.Domain.BenchLogs;

/// <summary>Reads one column of numbers into its base unit, and counts what it could not use.</summary>
/// <param name="column">The column.</param>
/// <param name="decimalMark">The mark of its fractions.</param>
internal sealed class LogMeter(LogColumn column, byte decimalMark)
{
    /// <summary>A reading beyond this is a fault of the log.</summary>
    public const double Largest = 1e12;

    private readonly LogUnit? _unit = column.Unit;
    private readonly byte[] _cellUnit = new byte[16];
    private int _cellUnitLength = -1;
    private LogUnit? _cellUnitMeaning;

    public LogColumn Column => column;

    public double Minimum { get; private set; } = double.PositiveInfinity;

    public double Maximum { get; private set; } = double.NegativeInfinity;

    public double First { get; private set; } = double.NaN;

    public double Last { get; private set; } = double.NaN;

    /// <summary>True while no reading was lower than the one before it.</summary>
    public bool NeverFalls { get; private set; } = true;

    public long Overloads { get; private set; }

    public long NotNumbers { get; private set; }

    public long Empty { get; private set; }

    public long Words { get; private set; }

    public long Unusable => Overloads + NotNumbers + Empty + Words;

    /// <summary>The cell's value in the base unit, NaN where it has none.</summary>
    public double Read(LogCells cells, ReadOnlySpan<byte> line)
    {
        var value = double.NaN;
        switch (LogNumber.Read(cells.Cell(line, column.Index), decimalMark, out var number, out var unit))
        {
            case LogCellKind.Number when unit.IsEmpty:
                value = _unit?.ToBase(number) ?? number;
                break;
            case LogCellKind.Number when OwnUnit(unit) is { } own && (_unit is null || own.Quantity == _unit.Quantity):
                value = own.ToBase(number);
                break;
            case LogCellKind.Overload:
                Overloads++;
                return double.NaN;
            case LogCellKind.NotANumber:
                NotNumbers++;
                return double.NaN;
            case LogCellKind.Empty:
                Empty++;
                return double.NaN;
        }

        if (!(Math.Abs(value) <= Largest))
        {
            Words++;
            return double.NaN;
        }

        Minimum = Math.Min(Minimum, value);
        Maximum = Math.Max(Maximum, value);
        First = double.IsNaN(First) ? value : First;
        NeverFalls &= !(value < Last);
        Last = value;
        return value;
    }

    private LogUnit? OwnUnit(ReadOnlySpan<byte> unit)
    {
        if (unit.Length > _cellUnit.Length)
            return null;
        if (_cellUnitLength != unit.Length || !unit.SequenceEqual(_cellUnit.AsSpan(0, unit.Length)))
        {
            unit.CopyTo(_cellUnit);
            _cellUnitLength = unit.Length;
            _cellUnitMeaning = LogUnit.Find(LogText.Decode(unit, Encoding.UTF8));
        }

        return _cellUnitMeaning;
    }
}
