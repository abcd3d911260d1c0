namespace Catalogue.Domain.BenchLogs;

/// <summary>Turns the time cells of a log into seconds after its first sample.</summary>
/// <param name="form">How the times are written.</param>
/// <param name="column">Their column, from 0.</param>
internal sealed class LogTime(LogTimeForm form, int column)
{
    // Day numbers count 30 December 1899 as zero; that holds from March 1900 on.
    private const long DayZeroTicks = 599_264_352_000_000_000;
    private const long UnixZeroTicks = 621_355_968_000_000_000;
    private const double LargestCounter = 1e19;

    private bool _started;
    private bool _hasZone;
    private long _firstTicks;
    private double _firstCount;
    private ulong _cachedDate;
    private ushort _cachedDateTail;
    private long _cachedDays;

    public LogTimeForm Form => form;

    public int Column => column;

    /// <summary>The column of the date, or -1.</summary>
    public int DateColumn { get; init; } = -1;

    public LogClock.DateOrder Order { get; init; }

    public byte DecimalMark { get; init; } = (byte)'.';

    /// <summary>The unit of the counter.</summary>
    public LogUnit Unit { get; init; } = LogUnit.Base(LogQuantity.Time)!;

    /// <summary>True when the counter counts from the start of 1970.</summary>
    public bool IsUnix { get; init; }

    /// <summary>How times are read, in words.</summary>
    public required string Words { get; init; }

    /// <summary>Date and time of the first sample as written, or null where there is no date.</summary>
    public DateTime? Start => !_started ? null : form switch
    {
        LogTimeForm.DateTime or LogTimeForm.DateAndClock => new DateTime(_firstTicks, _hasZone ? DateTimeKind.Utc : DateTimeKind.Unspecified),
        LogTimeForm.DayNumber => Moment(DayZeroTicks + (_firstCount * TimeSpan.TicksPerDay), DateTimeKind.Unspecified),
        LogTimeForm.Counter when IsUnix => Moment(UnixZeroTicks + (Unit.ToBase(_firstCount) * TimeSpan.TicksPerSecond), DateTimeKind.Utc),
        _ => null,
    };

    /// <summary>Seconds after the first sample; false where the cell holds no time of the log's form.</summary>
    public bool TryRead(LogCells cells, ReadOnlySpan<byte> line, out double seconds)
    {
        var cell = cells.Cell(line, column);
        return form is LogTimeForm.Counter or LogTimeForm.DayNumber ? TryCount(cell, out seconds) : TryTicks(cell, cells, line, out seconds);
    }

    private bool TryCount(ReadOnlySpan<byte> cell, out double seconds)
    {
        seconds = 0;
        LogNumber.TryPlain(cell, DecimalMark, out var count, out var used);
        if (used == 0 || used != cell.Length || !(Math.Abs(count) < LargestCounter))
            return false;
        if (!_started)
            (_started, _firstCount) = (true, count);
        seconds = Unit.ToBase(count - _firstCount);
        return true;
    }

    private bool TryTicks(ReadOnlySpan<byte> cell, LogCells cells, ReadOnlySpan<byte> line, out double seconds)
    {
        seconds = 0;
        long ticks;
        var hasZone = false;
        switch (form)
        {
            case LogTimeForm.DateTime when TrySameDay(cell, out ticks):
                break;
            case LogTimeForm.DateTime:
                if (!LogClock.TryDateTime(cell, Order, out ticks, out hasZone))
                    return false;
                RememberDay(cell, hasZone);
                break;
            case LogTimeForm.DateAndClock:
                var date = cells.Cell(line, DateColumn);
                if (!LogClock.TryDate(date, Order, out var days, out var dateUsed) || dateUsed != date.Length || !TryWholeClock(cell, out ticks))
                    return false;
                ticks += days;
                break;
            default:
                if (!TryWholeClock(cell, out ticks))
                    return false;
                break;
        }

        if (!_started)
            (_started, _firstTicks, _hasZone) = (true, ticks, hasZone);
        seconds = (ticks - _firstTicks) / (double)TimeSpan.TicksPerSecond;
        // A clock time and a moment in UTC cannot be told apart by a difference of hours.
        return hasZone == _hasZone;
    }

    private static bool TryWholeClock(ReadOnlySpan<byte> cell, out long ticks) => LogClock.TryClock(cell, out ticks, out var used) && used == cell.Length;

    // Nearly every row has the date of the row before; ten bytes are compared and not read again.
    private bool TrySameDay(ReadOnlySpan<byte> cell, out long ticks)
    {
        ticks = 0;
        if (_cachedDate == 0 || cell.Length < 16 || BitConverter.ToUInt64(cell) != _cachedDate || BitConverter.ToUInt16(cell[8..]) != _cachedDateTail
            || cell[10] is not ((byte)' ' or (byte)'T') || !LogClock.TryClock(cell[11..], out var clock, out var used) || used != cell.Length - 11 || clock >= TimeSpan.TicksPerDay)
            return false;
        ticks = _cachedDays + clock;
        return true;
    }

    private void RememberDay(ReadOnlySpan<byte> cell, bool hasZone)
    {
        if (hasZone || cell.Length < 16 || !LogClock.TryDate(cell[..10], Order, out var days, out var used) || used != 10)
            return;
        (_cachedDate, _cachedDateTail, _cachedDays) = (BitConverter.ToUInt64(cell), BitConverter.ToUInt16(cell[8..]), days);
    }

    private static DateTime? Moment(double ticks, DateTimeKind kind) =>
        ticks >= 0 && ticks < DateTime.MaxValue.Ticks ? new DateTime((long)Math.Round(ticks / TimeSpan.TicksPerMillisecond) * TimeSpan.TicksPerMillisecond, kind) : null;
}
