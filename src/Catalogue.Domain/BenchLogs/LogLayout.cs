using System.Globalization;

namespace Catalogue.Domain.BenchLogs;

/// <summary>What each column of a log is, and how its times are read; found from the first lines.</summary>
internal sealed class LogLayout
{
    private const int MostLines = 400;

    private readonly LogTable _table;
    private readonly IReadOnlyList<ReadOnlyMemory<byte>> _lines;
    private readonly Func<ReadOnlySpan<byte>, string> _decode;
    private readonly BenchLogOptions _options;
    private readonly LogCells _cells = new();

    private LogLayout(LogTable table, IReadOnlyList<ReadOnlyMemory<byte>> lines, Func<ReadOnlySpan<byte>, string> decode, BenchLogOptions options)
    {
        (_table, _lines, _decode, _options) = (table, lines, decode, options);
        Columns = MakeColumns();
        Preamble = table.Preamble(lines, decode);
        Look();
        TakeGiven();
        TakeUnits();
        var times = TakeTimes();
        TakeOthers();
        Choose();
        Time = times;
        Start = Time is { Form: LogTimeForm.DateTime or LogTimeForm.DateAndClock or LogTimeForm.DayNumber } ? null : StartElsewhere();
        SayAssumedUnits();
        SayUnused();
    }

    public LogTable Table => _table;

    /// <summary>What the caller makes of a clock that goes back.</summary>
    public BenchLogStepBack StepBack => _options.StepBack;

    public IReadOnlyList<LogColumn> Columns { get; }

    public LogTime? Time { get; }

    /// <summary>The start as lines above the header or another column give it.</summary>
    public DateTime? Start { get; }

    public List<string> Preamble { get; }

    public List<string> Assumptions { get; } = [];

    public List<BenchLogWarning> Warnings { get; } = [];

    /// <summary>Lays the log out, or null where no line has a number.</summary>
    public static LogLayout? Find(IReadOnlyList<ReadOnlyMemory<byte>> lines, Func<ReadOnlySpan<byte>, string> decode, BenchLogOptions options) =>
        LogTable.Find(lines) is { } table ? new LogLayout(table, lines, decode, options) : null;

    /// <summary>True when voltage or current are rms values: their product is no power, and no net charge flows.</summary>
    public bool IsAlternating => IsRms(BenchLogRole.Voltage) || IsRms(BenchLogRole.Current);

    /// <summary>The same of the input.</summary>
    public bool IsInputAlternating => IsRms(BenchLogRole.InputVoltage) || IsRms(BenchLogRole.InputCurrent);

    public LogColumn? Column(BenchLogRole role) => Columns.FirstOrDefault(column => column.Role == role);

    private bool IsRms(BenchLogRole role) => Column(role)?.Meaning.Marks.HasFlag(LogName.Mark.Alternating) == true;

    private List<LogColumn> MakeColumns()
    {
        var width = Math.Min(_table.Width, LogCells.MaxColumns);
        var names = _table.Header >= 0 ? _table.Texts(_lines[_table.Header], _decode) : [];
        var units = _table.Units >= 0 ? _table.Texts(_lines[_table.Units], _decode) : [];
        var columns = new List<LogColumn>(width);
        for (var i = 0; i < Math.Max(width, Math.Min(names.Length, LogCells.MaxColumns)); i++)
        {
            var column = new LogColumn(i, Text.PlainText.Clean(names.ElementAtOrDefault(i)) ?? "");
            if (LogUnit.Find(units.ElementAtOrDefault(i)?.Trim('[', ']', '(', ')')) is { } unit)
                (column.Unit, column.Source) = (unit, BenchLogUnitSource.UnitRow);
            columns.Add(column);
        }

        if (_table.Header < 0)
            Warnings.Add(new(BenchLogWarningKind.Layout, "The log has no header, so its columns have no names; say which is what.", IsQuestion: true));
        else if (columns.Where(column => column.Name.Length == 0).Select(column => Number(column.Index + 1)).ToList() is { Count: > 0 } nameless)
            Warnings.Add(new(BenchLogWarningKind.Layout, nameless.Count == 1
                ? $"Column {nameless[0]} has no name{(nameless[0] == Number(columns.Count) ? " (nameless last column)" : "")} and is not used."
                : $"Columns without a name are not used: {string.Join(", ", nameless.Take(20))}{(nameless.Count > 20 ? " …" : "")}."));
        if (Math.Max(_table.Width, names.Length) > LogCells.MaxColumns)
            Warnings.Add(new(BenchLogWarningKind.Layout, $"Only the first {LogCells.MaxColumns} columns are read."));
        if (_table.IsDecimalMarkDoubtful)
            Warnings.Add(new(BenchLogWarningKind.Unit, "Every comma stands before three digits: they were read as decimal commas, but could stand between thousands.", IsQuestion: true));
        return columns;
    }

    private IEnumerable<ReadOnlyMemory<byte>> SampleLines() => _lines.Skip(_table.FirstSamples).Take(MostLines);

    private void Look()
    {
        foreach (var memory in SampleLines())
        {
            var line = memory.Span;
            _cells.Split(line, _table.Delimiter);
            for (var i = 0; i < Math.Min(_cells.Count, Columns.Count); i++)
                Look(Columns[i], _cells.Cell(line, i));
        }
    }

    private void Look(LogColumn column, ReadOnlySpan<byte> cell)
    {
        if (cell.Length is >= 4 and <= 64 && cell.IndexOfAnyExcept((byte)'0', (byte)'1') < 0 && (column.DigitalLength == 0 || column.DigitalLength == cell.Length))
        {
            column.Digitals++;
            column.DigitalLength = cell.Length;
        }

        switch (LogNumber.Read(cell, _table.DecimalMark, out _, out var unit))
        {
            case LogCellKind.Empty:
                column.Missing++;
                return;
            case LogCellKind.Number or LogCellKind.Overload or LogCellKind.NotANumber:
                column.Numbers++;
                if (!unit.IsEmpty && column.Unit is null && LogUnit.Find(_decode(unit)) is { } own)
                    (column.Unit, column.Source) = (own, BenchLogUnitSource.Cell);
                return;
            default:
                column.Words++;
                column.UnitWords += cell.Length <= 12 && LogUnit.Find(_decode(cell)) is not null ? 1 : 0;
                column.Clocks += LogClock.TryClock(cell, out _, out var used) && used == cell.Length ? 1 : 0;
                column.Dates += IsDateTime(cell, LogClock.DateOrder.YearFirst) || IsDateTime(cell, LogClock.DateOrder.DayFirst) || IsDateTime(cell, LogClock.DateOrder.MonthFirst) ? 1 : 0;
                return;
        }
    }

    private static bool IsDateTime(ReadOnlySpan<byte> cell, LogClock.DateOrder order) => LogClock.TryDateTime(cell, order, out _, out _);

    private void TakeGiven()
    {
        foreach (var mapping in _options.Columns)
        {
            var column = Columns.FirstOrDefault(candidate => candidate.Name == mapping.Column)
                ?? (int.TryParse(mapping.Column, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? Columns.ElementAtOrDefault(number - 1) : null);
            if (column is null)
            {
                Warnings.Add(new(BenchLogWarningKind.Columns, $"There is no column “{mapping.Column}”; what was said of it is not used."));
                continue;
            }

            (column.Role, column.IsGiven, column.Quantity) = (mapping.Role, true, QuantityOf(mapping.Role));
            if (LogUnit.Find(mapping.Unit) is { } unit)
                (column.Unit, column.Source) = (unit, BenchLogUnitSource.Given);
        }
    }

    private void TakeUnits()
    {
        foreach (var column in Columns)
        {
            if (column.Source is not BenchLogUnitSource.Given && column.Meaning.Unit is { } named)
                (column.Unit, column.Source) = (named, BenchLogUnitSource.Name);
            if (column.IsGiven)
                continue;
            var (words, unit) = (column.Meaning.Quantity, column.Unit?.Quantity ?? LogQuantity.None);
            column.Quantity = unit is LogQuantity.None ? words : unit;
            column.Fit = (words != LogQuantity.None && words == column.Quantity ? 4 : 0) + (unit != LogQuantity.None ? 2 : 0)
                + (column.Meaning.Marks.HasFlag(LogName.Mark.Output) ? 1 : 0) - (column.Meaning.Marks.HasFlag(LogName.Mark.Derived) ? 5 : 0);
        }
    }

    private LogTime? TakeTimes()
    {
        var candidates = Columns.Where(column => column.IsGiven ? column.Role is BenchLogRole.Time or BenchLogRole.Date : MayBeTime(column)).ToList();
        var dates = candidates.Where(IsDateOnly).ToList();
        foreach (var column in candidates)
            column.Role = dates.Contains(column) && candidates.Exists(other => other.Clocks > 0) ? BenchLogRole.Date : BenchLogRole.Time;
        var date = candidates.Find(column => column.Role == BenchLogRole.Date);
        var best = candidates.Where(column => column.Role == BenchLogRole.Time).OrderByDescending(column => column.IsGiven).Select(column => TimeOf(column, date))
            .OfType<LogTime>().OrderBy(time => time.Form == LogTimeForm.Clock ? 1 : 0).FirstOrDefault();
        if (best is null)
            return null;
        SayTime(best);
        return best;
    }

    private static bool MayBeTime(LogColumn column)
    {
        if (column.Filled == 0)
            return false;
        if ((column.Dates + column.Clocks) * 2 > column.Filled)
            return true;
        var named = column.Quantity == LogQuantity.Time || (column.Meaning.Marks.HasFlag(LogName.Mark.Date) && column.Unit is null);
        return named && column.Numbers * 2 > column.Filled && !column.Meaning.Marks.HasFlag(LogName.Mark.Set);
    }

    private bool IsDateOnly(LogColumn column) => column.Dates > 0 && FirstCells(column).All(cell =>
        Enum.GetValues<LogClock.DateOrder>().Any(order => LogClock.TryDate(cell, order, out _, out var used) && used == cell.Length));

    private IEnumerable<byte[]> FirstCells(LogColumn column)
    {
        foreach (var memory in SampleLines())
        {
            _cells.Split(memory.Span, _table.Delimiter);
            if (_cells.Cell(memory.Span, column.Index) is { IsEmpty: false, Length: <= 64 } cell && TableHasHeaderLine(memory) is false)
                yield return cell.ToArray();
        }
    }

    private bool TableHasHeaderLine(ReadOnlyMemory<byte> line) => _table.Header >= 0 && line.Span.SequenceEqual(_lines[_table.Header].Span);

    private LogTime? TimeOf(LogColumn column, LogColumn? date)
    {
        var cells = FirstCells(column).ToList();
        if (column.Dates * 2 > column.Filled)
            return new LogTime(LogTimeForm.DateTime, column.Index) { Order = OrderOf(cells), Words = "date and time as written" };
        if (column.Clocks * 2 > column.Filled)
        {
            if (date is not null)
                return new LogTime(LogTimeForm.DateAndClock, column.Index) { DateColumn = date.Index, Order = OrderOf([.. FirstCells(date)]), Words = $"date of “{date.Title}” and time of day as written" };
            var isElapsed = column.Meaning.Marks.HasFlag(LogName.Mark.Elapsed) || column.Name.Contains("D.h", StringComparison.OrdinalIgnoreCase)
                || cells.Any(cell => LogClock.TryClock(cell, out var ticks, out _) && ticks >= TimeSpan.TicksPerDay)
                || (cells.Count > 0 && LogClock.TryClock(cells[0], out var first, out _) && first < TimeSpan.TicksPerSecond);
            return isElapsed
                ? new LogTime(LogTimeForm.Elapsed, column.Index) { Words = "hours, minutes and seconds since the start" }
                : new LogTime(LogTimeForm.Clock, column.Index) { Words = "time of day without a date" };
        }

        return column.Numbers > 0 ? CounterOf(column, cells) : null;
    }

    private LogTime? CounterOf(LogColumn column, List<byte[]> cells)
    {
        var values = new List<double>();
        foreach (var cell in cells)
        {
            LogNumber.TryPlain(cell, _table.DecimalMark, out var value, out var used);
            if (used > 0 && used == cell.Length)
                values.Add(value);
        }

        if (values.Count == 0)
            return null;
        if (column.Unit is { Quantity: LogQuantity.Time } unit)
        {
            var isUnix = unit.ToBase(values[0]) is >= 1e9 and < 5e9;
            return Counter(column, unit, isUnix, isUnix ? $"{unit.Text} since the start of 1970" : $"counter in {unit.Text}");
        }

        var looksLikeDays = values[0] is >= 20_000 and < 80_000 && (column.Meaning.Marks.HasFlag(LogName.Mark.Date) || (values.Exists(value => value % 1 != 0) && values.TrueForAll(value => Math.Abs(value - values[0]) < 2)));
        if (looksLikeDays)
        {
            Warnings.Add(new(BenchLogWarningKind.TimeBase, $"The times in “{column.Title}” are spreadsheet day numbers; they were read with the 1900 date system."));
            return new LogTime(LogTimeForm.DayNumber, column.Index) { DecimalMark = _table.DecimalMark, Unit = LogUnit.Find("d")!, Words = "spreadsheet day numbers, 1900 date system" };
        }

        foreach (var name in (ReadOnlySpan<string>)["s", "ms", "µs", "ns"])
            if (LogUnit.Find(name) is { } since && since.ToBase(values[0]) is >= 1e9 and < 5e9)
                return Counter(column, since, true, $"{name} since the start of 1970");
        Warnings.Add(new(BenchLogWarningKind.TimeBase, $"The unit of the times in “{column.Title}” is not written; seconds were taken. Give the unit if it is another.", IsQuestion: true));
        return Counter(column, LogUnit.Base(LogQuantity.Time)!, false, "counter, taken as seconds");
    }

    private LogTime Counter(LogColumn column, LogUnit unit, bool isUnix, string words) =>
        new(LogTimeForm.Counter, column.Index) { DecimalMark = _table.DecimalMark, Unit = unit, IsUnix = isUnix, Words = words };

    private LogClock.DateOrder OrderOf(List<byte[]> cells)
    {
        var fits = Enum.GetValues<LogClock.DateOrder>().Select(order => (Order: order, Fits: cells.Count(cell => IsDateTime(cell, order)))).ToList();
        var (best, most) = fits.MaxBy(entry => entry.Fits);
        // With points the day comes first everywhere; with strokes and hyphens both ways are in use.
        if (best == LogClock.DateOrder.DayFirst && fits[(int)LogClock.DateOrder.MonthFirst].Fits == most && !cells.Exists(cell => cell.AsSpan(0, Math.Min(cell.Length, 10)).Contains((byte)'.')))
            Warnings.Add(new(BenchLogWarningKind.TimeBase, "The dates can be read day first or month first; day first was taken.", IsQuestion: true));
        return best;
    }

    private void SayTime(LogTime time)
    {
        var others = Columns.Where(column => column.Role == BenchLogRole.Time && column.Index != time.Column).Select(column => $"“{column.Title}”").ToList();
        Assumptions.Add($"Time: {time.Words}, from “{Columns[time.Column].Title}”{(others.Count > 0 ? $"; not used: {string.Join(", ", others)}" : "")}.");
        if (time.Form is LogTimeForm.DateTime or LogTimeForm.DateAndClock or LogTimeForm.Clock)
            Assumptions.Add("A time without a zone is taken as written; no change of the clocks is put in or taken out.");
    }

    private void TakeOthers()
    {
        var hasUnitColumn = Columns.Any(column => !column.IsGiven && IsUnitColumn(column) && (column.Role = BenchLogRole.UnitName) == BenchLogRole.UnitName)
            || Column(BenchLogRole.UnitName) is not null;
        foreach (var column in Columns.Where(column => !column.IsGiven && column.Role == BenchLogRole.Other))
        {
            var marks = column.Meaning.Marks;
            column.Role = column switch
            {
                { Filled: 0 } => BenchLogRole.Text,
                _ when marks.HasFlag(LogName.Mark.Segment) => BenchLogRole.Segment,
                _ when hasUnitColumn && marks.HasFlag(LogName.Mark.Value) => BenchLogRole.Value,
                _ when column.Digitals > 0 && column.Digitals == column.Filled && column.Quantity == LogQuantity.None => BenchLogRole.Digital,
                _ when column.Numbers == 0 && column.Words > 0 => BenchLogRole.Text,
                _ when marks.HasFlag(LogName.Mark.Set) && column.Quantity is LogQuantity.Voltage or LogQuantity.Current or LogQuantity.Power => BenchLogRole.SetValue,
                { Quantity: LogQuantity.Charge } => BenchLogRole.Charge,
                { Quantity: LogQuantity.Energy } => BenchLogRole.Energy,
                { Quantity: LogQuantity.Temperature } => BenchLogRole.Temperature,
                _ => BenchLogRole.Other,
            };
        }
    }

    private static bool IsUnitColumn(LogColumn column) => column.UnitWords > 0 && column.UnitWords * 10 >= column.Words * 9 && column.Numbers == 0;

    private void Choose()
    {
        (LogQuantity Quantity, BenchLogRole Output, BenchLogRole Input)[] kinds =
        [
            (LogQuantity.Voltage, BenchLogRole.Voltage, BenchLogRole.InputVoltage),
            (LogQuantity.Current, BenchLogRole.Current, BenchLogRole.InputCurrent),
            (LogQuantity.Power, BenchLogRole.Power, BenchLogRole.InputPower),
        ];
        bool IsInput(LogColumn column) => column.Meaning.Marks.HasFlag(LogName.Mark.Input) && !column.Meaning.Marks.HasFlag(LogName.Mark.Output);
        bool MayBe(LogColumn column, LogQuantity quantity) => !column.IsGiven && column.Role == BenchLogRole.Other && column.Quantity == quantity && column.Fit > 0;
        // Where nothing is called the output, what goes in is all there is to measure.
        // A power that is not called the output may well be that of the input's voltage and current.
        var hasOutput = kinds.Any(kind => Column(kind.Output) is not null || Columns.Any(column => MayBe(column, kind.Quantity) && !IsInput(column)
            && (kind.Quantity != LogQuantity.Power || column.Meaning.Marks.HasFlag(LogName.Mark.Output))));
        foreach (var (quantity, output, input) in kinds)
        {
            if (hasOutput)
                Take(Columns.Where(column => MayBe(column, quantity) && IsInput(column)).ToList(), input);
            Take(Columns.Where(column => MayBe(column, quantity) && (!hasOutput || !IsInput(column))).ToList(), output);
        }
    }

    private void Take(List<LogColumn> candidates, BenchLogRole role)
    {
        if (candidates.Count == 0 || Column(role) is not null)
            return;
        var fit = candidates.Max(column => column.Fit);
        var best = candidates.Where(column => column.Fit == fit).ToList();
        best[0].Role = role;
        if (best.Count > 1)
            Warnings.Add(new(BenchLogWarningKind.Columns, $"{string.Join(", ", best.Take(8).Select(column => $"“{column.Title}”"))} could each be the {Words(role)}; “{best[0].Title}” was taken.", IsQuestion: true));
    }

    private void SayAssumedUnits()
    {
        foreach (var column in Columns)
        {
            var quantity = QuantityOf(column.Role);
            if (quantity == LogQuantity.None)
                continue;
            if (column.Unit is { } unit && unit.Quantity != quantity)
            {
                Warnings.Add(new(BenchLogWarningKind.Unit, $"“{column.Title}” is taken as {Words(column.Role)}, which its unit {unit.Text} does not measure; the column is not used."));
                column.Role = BenchLogRole.Other;
            }
            else if (column.Unit is { IsMega: true } mega)
            {
                Warnings.Add(new(BenchLogWarningKind.Unit, $"The unit {mega.Text} of “{column.Title}” is read as written, as mega. If milli is meant, give the unit m{mega.Text[1..]}.", IsQuestion: true));
            }
            else if (column.Unit is null && column.Role is not BenchLogRole.Time && LogUnit.Base(quantity) is { } assumed)
            {
                (column.Unit, column.Source) = (assumed, BenchLogUnitSource.Assumed);
                Assumptions.Add($"The unit of “{column.Title}” is not written; {assumed.Text} was taken.");
            }
        }
    }

    private void SayUnused()
    {
        if (Titles(BenchLogRole.SetValue) is { Length: > 0 } set)
            Warnings.Add(new(BenchLogWarningKind.Columns, $"Set values are not measurements and are not used: {set}."));
        if (Titles(BenchLogRole.Other) is { Length: > 0 } others)
            Warnings.Add(new(BenchLogWarningKind.Columns, $"Columns not used: {others}."));
    }

    private string Titles(BenchLogRole role)
    {
        var titles = Columns.Where(column => column.Role == role && column.Name.Length > 0).Select(column => column.Title).ToList();
        return string.Join(", ", titles.Take(40)) + (titles.Count > 40 ? " …" : "");
    }

    private DateTime? StartElsewhere()
    {
        foreach (var line in Preamble)
            foreach (var part in line.Split([',', ';', '\t', '='], StringSplitOptions.TrimEntries))
                if (part.Contains(':', StringComparison.Ordinal) && LogClock.TryDateTime(System.Text.Encoding.UTF8.GetBytes(part.Trim('"')), LogClock.DateOrder.YearFirst, out var ticks, out var hasZone))
                    return new DateTime(ticks, hasZone ? DateTimeKind.Utc : DateTimeKind.Unspecified);
        foreach (var column in Columns.Where(column => column.Role == BenchLogRole.Time && column.Index != Time?.Column && column.Unit is { Quantity: LogQuantity.Time }))
        {
            var first = FirstCells(column).FirstOrDefault();
            LogNumber.TryPlain(first, _table.DecimalMark, out var count, out _);
            if (column.Unit!.ToBase(count) is >= 1e9 and < 5e9 and var seconds)
                return DateTime.UnixEpoch.AddSeconds(seconds);
        }

        return null;
    }

    private static LogQuantity QuantityOf(BenchLogRole role) => role switch
    {
        BenchLogRole.Time => LogQuantity.Time,
        BenchLogRole.Voltage or BenchLogRole.InputVoltage => LogQuantity.Voltage,
        BenchLogRole.Current or BenchLogRole.InputCurrent => LogQuantity.Current,
        BenchLogRole.Power or BenchLogRole.InputPower => LogQuantity.Power,
        BenchLogRole.Charge => LogQuantity.Charge,
        BenchLogRole.Energy => LogQuantity.Energy,
        BenchLogRole.Temperature => LogQuantity.Temperature,
        _ => LogQuantity.None,
    };

    private static string Words(BenchLogRole role) => Text.SnakeCase.Code(role).Replace('_', ' ');

    private static string Number(int value) => value.ToString(CultureInfo.InvariantCulture);
}
