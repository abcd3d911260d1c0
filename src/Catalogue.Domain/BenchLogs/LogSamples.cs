namespace Catalogue.Domain.BenchLogs;

/// <summary>Takes the samples of a log one by one and keeps sums, extremes and trace of them, in memory that does not grow.</summary>
internal sealed class LogSamples
{
    private const double GapInSteps = 5;

    // Wider than the noise of a difference of two times, narrower than any clock ticks.
    private const double Noise = 1e-6;
    private const double DaySeconds = 86400;

    private readonly LogLayout _layout;
    private readonly BenchLogStepBack _stepBack;
    private readonly LogCells _cells;
    private readonly LogTime? _time;
    private readonly LogMeter?[] _meters = new LogMeter?[(int)BenchLogRole.Other + 1];
    private readonly List<LogMeter> _others = [];
    private readonly bool _isAlternating;
    private readonly bool _isInputAlternating;
    private readonly LogMeter? _voltMeter, _ampereMeter, _wattMeter, _inVoltMeter, _inAmpereMeter, _inWattMeter;
    private readonly LogAutoRange? _autoRange;
    private readonly LogStepLengths _lengths = new();
    private readonly LogIntegral _charge = new();
    private readonly LogIntegral _energy = new();
    private readonly LogSteps _steps = new();
    private readonly LogTrace _trace = new();
    private readonly LogSegments _segments;
    private LogTrapezoid _pairedInput = new();
    private LogTrapezoid _pairedOutput = new();
    private bool _timeStarted;
    private double _stretchStart, _forwardBefore;
    private double _offset, _lastTime, _lastVolt = double.NaN, _lastAmpere = double.NaN, _lastWatt = double.NaN;

    public LogSamples(LogLayout layout, LogCells cells, BenchLogStepBack stepBack, Func<ReadOnlySpan<byte>, string> decode)
    {
        (_layout, _cells, _stepBack, _time) = (layout, cells, stepBack, layout.Time);
        (_isAlternating, _isInputAlternating) = (layout.IsAlternating, layout.IsInputAlternating);
        foreach (var column in layout.Columns)
            AddMeter(column);
        (_voltMeter, _ampereMeter, _wattMeter) = (Meter(BenchLogRole.Voltage), Meter(BenchLogRole.Current), Meter(BenchLogRole.Power));
        (_inVoltMeter, _inAmpereMeter, _inWattMeter) = (Meter(BenchLogRole.InputVoltage), Meter(BenchLogRole.InputCurrent), Meter(BenchLogRole.InputPower));
        if (layout.Column(BenchLogRole.Value) is { } value && layout.Column(BenchLogRole.UnitName) is { } unit)
            _autoRange = new LogAutoRange(value.Index, unit.Index, layout.Table.DecimalMark, decode);
        _segments = new LogSegments(layout.Column(BenchLogRole.Segment)?.Index ?? -1, decode);
        Power = HasPower ? new LogTally() : null;
    }

    public long Samples { get; private set; }

    public long Complete { get; private set; }

    public long Usable { get; private set; }

    public long TimesUnreadable { get; private set; }

    public long Doubled { get; private set; }

    public long SameTime { get; private set; }

    public long StepsBack { get; private set; }

    public double LongestStepBack { get; private set; }

    public long StepBackLine { get; private set; }

    public long Midnights { get; private set; }

    public bool StepsBackToStart { get; private set; }

    public double LongestStep { get; private set; }

    public long LongestStepLine { get; private set; }

    /// <summary>Seconds in which time ran forward.</summary>
    public double Forward { get; private set; }

    public LogTally Voltage { get; } = new();

    public LogTally Current { get; } = new();

    public LogTally? Power { get; }

    public LogAutoRange? AutoRange => _autoRange;

    public LogSteps Steps => _steps;

    public LogSegments Segments => _segments;

    public LogTrace Trace => _trace;

    public double? ChargeAs => _charge.Total;

    public double? EnergyWs => _energy.Total;

    public double? MedianStep => _lengths.Median();

    public bool HasVoltage => _voltMeter is not null || (!_isAlternating && _wattMeter is not null && _ampereMeter is not null);

    public bool HasCurrent => _ampereMeter is not null || (!_isAlternating && _wattMeter is not null && _voltMeter is not null);

    public bool HasPower => _wattMeter is not null || (!_isAlternating && _voltMeter is not null && _ampereMeter is not null);

    public bool HasPair => HasPower && HasInput;

    public (double InputWs, double OutputWs)? Paired => _pairedInput.HasSteps && _pairedOutput.HasSteps ? (_pairedInput.Total, _pairedOutput.Total) : null;

    private bool HasInput => _inWattMeter is not null || (!_isInputAlternating && _inVoltMeter is not null && _inAmpereMeter is not null);

    /// <summary>The meter of a column, or null where the column is not read.</summary>
    public LogMeter? Meter(BenchLogRole role) => _meters[(int)role];

    public LogMeter? MeterOf(LogColumn column) => _meters[(int)column.Role] is { } meter && meter.Column == column ? meter : _others.Find(other => other.Column == column);

    /// <summary>Number, total length and sums without them of the steps longer than five times the median.</summary>
    public (long Count, double Length, double? ChargeAs, double? EnergyWs) Gaps()
    {
        if (_lengths.Median() is not { } median)
            return default;
        var limit = GapInSteps * median * (1 + Noise);
        var (count, length, _) = _lengths.LongerThan(limit);
        return (count, length, _charge.WithoutLongerThan(limit), _energy.WithoutLongerThan(limit));
    }

    /// <summary>
    /// Takes the line that the cells were just split from; false where it holds no sample. Of a line that was cut off only the time is taken, and
    /// that only where another cell follows it.
    /// </summary>
    public bool Take(ReadOnlySpan<byte> line, long number, bool isCutOff)
    {
        var time = 0.0;
        var hasTime = _time is not null && (!isCutOff || _time.Column < _cells.Count - 1) && _time.TryRead(_cells, line, out time);
        if (isCutOff && !hasTime)
            return false;
        var (volt, ampere, watt) = (double.NaN, double.NaN, double.NaN);
        if (!isCutOff)
            Measure(line, ref volt, ref ampere, ref watt);
        if (!hasTime && double.IsNaN(volt) && double.IsNaN(ampere) && double.IsNaN(watt) && !HasAnyNumber(line))
            return false;
        foreach (var other in isCutOff ? [] : _others)
            other.Read(_cells, line);
        Samples++;
        Complete += _cells.Count >= _layout.Table.Width ? 1 : 0;
        TimesUnreadable += _time is not null && !hasTime ? 1 : 0;
        WorkOut(ref volt, ref ampere, ref watt);
        Usable += double.IsNaN(volt) || double.IsNaN(ampere) ? 0 : 1;
        var goesBack = hasTime && Step(time, volt, ampere, watt, number);
        if (!double.IsNaN(volt))
            Voltage.Add(volt);
        if (!double.IsNaN(ampere))
            Current.Add(ampere);
        if (!double.IsNaN(watt))
            Power?.Add(watt);
        (_lastVolt, _lastAmpere, _lastWatt) = (volt, ampere, watt);
        var at = hasTime ? Forward : double.NaN;
        Integrate(line, at, goesBack, volt, ampere, watt);
        return true;
    }

    // A power column beside voltage and current is not needed: the product of what was measured is less rounded.
    private void WorkOut(ref double volt, ref double ampere, ref double watt)
    {
        if (_autoRange is not null || _isAlternating)
            return;
        if (_voltMeter is not null && _ampereMeter is not null)
            watt = volt * ampere;
        else if (_voltMeter is not null && _wattMeter is not null)
            ampere = volt == 0 ? double.NaN : Bounded(watt / volt);
        else if (_ampereMeter is not null && _wattMeter is not null)
            volt = ampere == 0 ? double.NaN : Bounded(watt / ampere);
    }

    private static double Bounded(double value) => Math.Abs(value) <= LogMeter.Largest ? value : double.NaN;

    private void Measure(ReadOnlySpan<byte> line, ref double volt, ref double ampere, ref double watt)
    {
        if (_voltMeter is not null)
            volt = _voltMeter.Read(_cells, line);
        if (_ampereMeter is not null)
            ampere = _ampereMeter.Read(_cells, line);
        if (_wattMeter is not null)
            watt = _wattMeter.Read(_cells, line);
        _autoRange?.Read(_cells, line, ref volt, ref ampere, ref watt);
    }

    /// <summary>Moves the clock on; true where it goes back.</summary>
    private bool Step(double written, double volt, double ampere, double watt, long number)
    {
        var time = written + _offset;
        if (!_timeStarted)
        {
            (_timeStarted, _lastTime, _stretchStart) = (true, time, time);
            return false;
        }

        var step = time - _lastTime;
        if (step < 0 && _stepBack == BenchLogStepBack.NextDay && _time!.Form == LogTimeForm.Clock)
        {
            _offset += DaySeconds;
            time += DaySeconds;
            step += DaySeconds;
            Midnights++;
        }

        _lastTime = time;
        if (step > 0)
        {
            _lengths.Add(step, 0);
            Forward = _forwardBefore + (time - _stretchStart);
            if (step > LongestStep)
                (LongestStep, LongestStepLine) = (step, number);
            return false;
        }

        if (step == 0)
        {
            // Equals holds for two missing values too.
            var isSame = volt.Equals(_lastVolt) && ampere.Equals(_lastAmpere) && watt.Equals(_lastWatt);
            Doubled += isSame ? 1 : 0;
            SameTime += isSame ? 0 : 1;
            return false;
        }

        StepsBack++;
        if (-step > LongestStepBack)
            (LongestStepBack, StepBackLine) = (-step, number);
        (_forwardBefore, _stretchStart) = (Forward, time);
        StepsBackToStart |= _time!.Form is LogTimeForm.Elapsed or LogTimeForm.Counter && time <= Math.Max(1, Forward * 0.01);
        return true;
    }

    private void Integrate(ReadOnlySpan<byte> line, double at, bool goesBack, double volt, double ampere, double watt)
    {
        if (goesBack)
        {
            _charge.Break();
            _energy.Break();
            _pairedInput.Break();
            _pairedOutput.Break();
        }

        var flow = _isAlternating ? double.NaN : ampere;
        _charge.Add(at, flow);
        _energy.Add(at, watt);
        _segments.Add(_cells, line, at, goesBack, flow, watt);
        if (HasInput)
            Pair(line, at, watt);
        var place = _time is null ? Samples - 1 : at;
        if (double.IsNaN(place))
            return;
        _trace.Add(place, volt, ampere, watt);
        if (!double.IsNaN(volt) && !double.IsNaN(ampere) && _time is not null)
            _steps.Add(place, volt, ampere);
    }

    // Only samples that have both sides count, so that both energies cover the same time.
    private void Pair(ReadOnlySpan<byte> line, double at, double watt)
    {
        var (volt, ampere) = (_inVoltMeter?.Read(_cells, line) ?? double.NaN, _inAmpereMeter?.Read(_cells, line) ?? double.NaN);
        var input = _inWattMeter?.Read(_cells, line) ?? double.NaN;
        if (!_isInputAlternating && _inVoltMeter is not null && _inAmpereMeter is not null)
            input = volt * ampere;
        if (double.IsNaN(input) || double.IsNaN(watt))
            return;
        _pairedInput.Add(at, input, out _, out _);
        _pairedOutput.Add(at, watt, out _, out _);
    }

    private bool HasAnyNumber(ReadOnlySpan<byte> line)
    {
        foreach (var column in _layout.Columns)
            if (column.Role is not (BenchLogRole.Text or BenchLogRole.Time or BenchLogRole.Date)
                && LogNumber.Read(_cells.Cell(line, column.Index), _layout.Table.DecimalMark, out _, out _) is not (LogCellKind.Words or LogCellKind.Empty))
                return true;
        return false;
    }

    private void AddMeter(LogColumn column)
    {
        if (column.Role is not (BenchLogRole.Voltage or BenchLogRole.Current or BenchLogRole.Power or BenchLogRole.InputVoltage or BenchLogRole.InputCurrent
            or BenchLogRole.InputPower or BenchLogRole.Charge or BenchLogRole.Energy or BenchLogRole.Temperature or BenchLogRole.SetValue))
            return;
        var meter = new LogMeter(column, _layout.Table.DecimalMark);
        var isFirst = _meters[(int)column.Role] is null;
        if (isFirst)
            _meters[(int)column.Role] = meter;
        // Voltage, current and power are read by name; an input without its pair is only looked through.
        if (!isFirst || column.Role is BenchLogRole.Charge or BenchLogRole.Energy or BenchLogRole.Temperature or BenchLogRole.SetValue
            || (IsInput(column.Role) && !HasInputColumns))
            _others.Add(meter);
    }

    private bool HasInputColumns => _layout.Column(BenchLogRole.InputPower) is not null
        || (!_isInputAlternating && _layout.Column(BenchLogRole.InputVoltage) is not null && _layout.Column(BenchLogRole.InputCurrent) is not null);

    private static bool IsInput(BenchLogRole role) => role is BenchLogRole.InputVoltage or BenchLogRole.InputCurrent or BenchLogRole.InputPower;
}
