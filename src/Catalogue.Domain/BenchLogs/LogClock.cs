namespace Catalogue.Domain.BenchLogs;

/// <summary>Reads dates and times of day from bytes, to the 100 ns that .NET counts in.</summary>
internal static class LogClock
{
    /// <summary>The order of the parts of a date.</summary>
    public enum DateOrder
    {
        YearFirst,
        DayFirst,
        MonthFirst,
    }

    /// <summary>
    /// A date, with or without a time of day, whose cell holds nothing else. Without a zone the ticks are those of the clock as written;
    /// with one, those of UTC.
    /// </summary>
    public static bool TryDateTime(ReadOnlySpan<byte> cell, DateOrder order, out long ticks, out bool hasZone)
    {
        ticks = 0;
        hasZone = false;
        if (!TryDate(cell, order, out var days, out var used))
            return false;
        var at = used;
        if (at == cell.Length)
        {
            ticks = days;
            return true;
        }

        if (cell[at] is (byte)',' && at + 1 < cell.Length)
            at++;
        if (cell[at] is not ((byte)' ' or (byte)'T' or (byte)'t' or (byte)'_') && at == used)
            return false;
        while (at < cell.Length && cell[at] is (byte)' ' or (byte)'T' or (byte)'t' or (byte)'_')
            at++;
        if (!TryClock(cell[at..], out var clock, out var clockLength) || clock >= TimeSpan.TicksPerDay)
            return false;
        at += clockLength;
        if (!TryZone(cell[at..], out var zone, out hasZone))
            return false;
        ticks = days + clock - zone;
        return ticks is >= 0 and < 3_155_378_975_999_999_999;
    }

    /// <summary>A date at the start of a cell.</summary>
    public static bool TryDate(ReadOnlySpan<byte> cell, DateOrder order, out long ticks, out int used)
    {
        ticks = 0;
        used = 0;
        var at = 0;
        if (!TryInteger(cell, ref at, 4, out var first) || at >= cell.Length || cell[at] is not ((byte)'-' or (byte)'/' or (byte)'.'))
            return false;
        var separator = cell[at++];
        if (!TryInteger(cell, ref at, 2, out var second) || at >= cell.Length || cell[at] != separator)
            return false;
        at++;
        if (!TryInteger(cell, ref at, 4, out var third))
            return false;
        var (year, month, day) = order switch
        {
            DateOrder.DayFirst => (third, second, first),
            DateOrder.MonthFirst => (third, first, second),
            _ => (first, second, third),
        };
        year += year < 100 ? 2000 : 0;
        if (year is < 1900 or > 9998 || month is < 1 or > 12 || day < 1 || day > DateTime.DaysInMonth(year, month))
            return false;
        ticks = new DateTime(year, month, day).Ticks;
        used = at;
        return true;
    }

    /// <summary>
    /// Hours, minutes and mostly seconds with a fraction, also days before them (<c>D.hh:mm:ss</c>) and AM or PM behind; at the start of a cell.
    /// Hours may pass 24.
    /// </summary>
    public static bool TryClock(ReadOnlySpan<byte> cell, out long ticks, out int used)
    {
        ticks = 0;
        used = 0;
        var at = 0;
        var days = 0;
        if (!TryInteger(cell, ref at, 5, out var hours) || at >= cell.Length)
            return false;
        if (cell[at] is (byte)'.' or (byte)' ' && cell[at..].Contains((byte)':') && at + 1 < cell.Length && char.IsAsciiDigit((char)cell[at + 1]))
        {
            days = hours;
            at++;
            if (!TryInteger(cell, ref at, 2, out hours) || at >= cell.Length)
                return false;
        }

        if (cell[at] != ':')
            return false;
        at++;
        var minutesAt = at;
        if (!TryInteger(cell, ref at, 2, out var minutes) || minutes > 59 || at - minutesAt != 2)
            return false;
        var seconds = 0;
        long fraction = 0;
        if (at < cell.Length && cell[at] == ':')
        {
            at++;
            if (!TryInteger(cell, ref at, 2, out seconds) || seconds > 60)
                return false;
            if (at + 1 < cell.Length && cell[at] is (byte)'.' or (byte)',' or (byte)':' && char.IsAsciiDigit((char)cell[at + 1]))
                fraction = Fraction(cell, ref at);
        }

        hours = Afternoon(cell, ref at, hours);
        ticks = (((((days * 24L) + hours) * 60) + minutes) * 60 + seconds) * TimeSpan.TicksPerSecond + fraction;
        used = at;
        return hours >= 0;
    }

    private static int Afternoon(ReadOnlySpan<byte> cell, ref int at, int hours)
    {
        var rest = cell[at..].TrimStart((byte)' ');
        if (rest.Length < 2 || (rest[1] | 0x20) != 'm' || (rest[0] | 0x20) is not ('a' or 'p') || hours > 12)
            return hours;
        at = cell.Length - rest.Length + 2;
        return (hours % 12) + ((rest[0] | 0x20) == 'p' ? 12 : 0);
    }

    private static long Fraction(ReadOnlySpan<byte> cell, ref int at)
    {
        at++;
        long fraction = 0;
        var unit = TimeSpan.TicksPerSecond;
        for (; at < cell.Length && char.IsAsciiDigit((char)cell[at]); at++)
        {
            unit /= 10;
            fraction += (cell[at] - '0') * unit;
        }

        return fraction;
    }

    private static bool TryZone(ReadOnlySpan<byte> rest, out long ticks, out bool hasZone)
    {
        ticks = 0;
        hasZone = false;
        rest = rest.Trim((byte)' ');
        if (rest.IsEmpty)
            return true;
        hasZone = true;
        if (rest.SequenceEqual("Z"u8) || rest.SequenceEqual("z"u8) || rest.SequenceEqual("UTC"u8))
            return true;
        var at = 1;
        if (rest[0] is not ((byte)'+' or (byte)'-') || !TryInteger(rest, ref at, 4, out var hours))
            return false;
        var minutes = 0;
        if (at > 3)
            (hours, minutes) = (hours / 100, hours % 100);
        else if (at < rest.Length && (rest[at++] != ':' || !TryInteger(rest, ref at, 2, out minutes)))
            return false;
        ticks = ((hours * 60L) + minutes) * TimeSpan.TicksPerMinute * (rest[0] == '-' ? -1 : 1);
        return at == rest.Length && hours <= 14 && minutes <= 59;
    }

    private static bool TryInteger(ReadOnlySpan<byte> cell, ref int at, int mostDigits, out int value)
    {
        value = 0;
        var from = at;
        for (; at < cell.Length && at - from < mostDigits && (uint)(cell[at] - '0') <= 9; at++)
            value = (value * 10) + cell[at] - '0';
        return at > from && (at >= cell.Length || (uint)(cell[at] - '0') > 9);
    }
}
