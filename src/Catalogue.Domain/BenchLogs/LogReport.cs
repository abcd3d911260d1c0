using System.Globalization;

namespace Catalogue.Domain.BenchLogs;

/// <summary>Makes the results of a log that was read to its end, and says what must be known of them.</summary>
/// <param name="layout">What its columns are.</param>
/// <param name="samples">What came together.</param>
/// <param name="remarks">What was odd about its lines.</param>
/// <param name="encoding">How its bytes were read.</param>
internal sealed class LogReport(LogLayout layout, LogSamples samples, LogRemarks remarks, LogEncoding encoding)
{
    private const double SecondsPerHour = 3600;

    // A current this small beside the largest one is the noise around zero.
    private const double Noticeable = 0.01;

    // A mean cannot leave the range of its samples; this much is rounding.
    private const double Rounding = 1e-9;

    private readonly List<BenchLogWarning> _warnings = [.. layout.Warnings];
    private readonly List<string> _assumptions = [.. layout.Assumptions];

    private bool _energyIsSaid;

    private bool IsOrderDoubtful => samples.StepsBack > 0 && layout.StepBack != BenchLogStepBack.Separate;

    public BenchLog Make()
    {
        SayEncoding();
        SayLines();
        SayUnusable();
        var duration = Duration();
        var (charge, energy) = (Charge(), Energy());
        var isMixed = samples.AutoRange is { IsMixed: true };
        var gaps = SayGaps(isMixed);
        SayDirection();
        var log = new BenchLog
        {
            Columns = [.. layout.Columns.Select(Column)],
            Samples = samples.Samples,
            CompleteSamples = samples.Complete,
            UsableSamples = samples.Usable,
            DurationS = duration,
            MedianStepS = samples.MedianStep,
            Start = layout.Time?.Start ?? layout.Start,
            ChargeAh = charge,
            EnergyWh = energy,
            MeanVoltageV = MeanVoltage(charge, energy),
            PeakW = Peak(),
            Voltage = Span(LogQuantity.Voltage) ?? Overloaded(samples.Voltage, BenchLogRole.Voltage),
            Current = Span(LogQuantity.Current) ?? Overloaded(samples.Current, BenchLogRole.Current),
            Power = Span(LogQuantity.Power) ?? samples.Power?.Span(),
            Resistance = Span(LogQuantity.Resistance),
            WithoutGaps = gaps,
            ForwardOnly = samples.StepsBack > 0 ? new BenchLogSum(Positive(samples.Forward), isMixed ? null : Hours(samples.ChargeAs), isMixed ? null : Hours(samples.EnergyWs)) : null,
            Efficiency = Efficiency(),
            Segments = samples.Segments.Complete(),
            Steps = samples.Steps.Complete(),
            Trace = samples.Trace.Complete(),
            Preamble = layout.Preamble,
            Encoding = encoding.Name,
            Delimiter = layout.Table.Delimiter == LogCells.NoDelimiter ? null : (char)layout.Table.Delimiter,
            DecimalMark = (char)layout.Table.DecimalMark,
            TimeBase = layout.Time?.Words,
            Assumptions = _assumptions,
            Warnings = _warnings,
        };
        SayBounds(log);
        return log;
    }

    private BenchLogColumn Column(LogColumn column)
    {
        var meter = samples.MeterOf(column);
        var isRead = meter is not null && meter.Minimum <= meter.Maximum;
        var source = column.Role == BenchLogRole.Value ? BenchLogUnitSource.UnitColumn : column.Source;
        return new BenchLogColumn(
            column.Name, column.Role, column.Role == BenchLogRole.Value ? null : column.Unit?.Text, source, isRead ? meter!.Minimum : null, isRead ? meter!.Maximum : null);
    }

    private BenchLogSpan? Span(LogQuantity quantity) => samples.AutoRange?.Of(quantity).Span();

    private BenchLogSpan? Overloaded(LogTally tally, BenchLogRole role)
    {
        tally.Overloads = samples.Meter(role)?.Overloads ?? 0;
        return tally.Span();
    }

    private void SayEncoding()
    {
        if (encoding.Doubt is { } doubt)
            Warn(BenchLogWarningKind.Encoding, doubt);
    }

    private void SayLines()
    {
        if (remarks.FormulaTexts > 0)
            Warn(BenchLogWarningKind.Layout, $"{Count(remarks.FormulaTexts, "cell")} written as =\"…\" {(remarks.FormulaTexts == 1 ? "is" : "are")} read as text; no formula is run.");
        if (remarks.RepeatedHeaders > 0)
            Warn(BenchLogWarningKind.Layout, $"The header is repeated {Times(remarks.RepeatedHeaders)}, first in line {Number(remarks.FirstRepeatedHeader)}.");
        if (remarks.OtherHeaderLine > 0)
            Warn(BenchLogWarningKind.Layout, $"Another header stands in line {Number(remarks.OtherHeaderLine)}; what comes below it is not read. Give each part as a file of its own.", isQuestion: true);
        if (remarks.LinesWithoutSample > 0)
            Warn(BenchLogWarningKind.Layout, $"{Count(remarks.LinesWithoutSample, "line")} without a sample passed over, the first is line {Number(remarks.FirstLineWithoutSample)}.");
        if (remarks.ShortLines > 0)
            Warn(BenchLogWarningKind.Layout, $"{Count(remarks.ShortLines, "line")} with fewer cells than the header; the missing cells count as empty.");
        if (remarks.TooLongLines > 0)
            Warn(BenchLogWarningKind.Layout, $"{Count(remarks.TooLongLines, "line")} longer than {BenchLogReader.MaxLineBytes / 1024} KiB passed over.");
        if (remarks.OpenQuotes > 0)
            Warn(BenchLogWarningKind.Layout, "Quotation marks do not pair up; the lines were read one by one.");
        if (remarks.CutOffLine > 0)
            Warn(BenchLogWarningKind.CutOff, $"The last line ({Number(remarks.CutOffLine)}) is cut off; its values are not used.");
        if (samples.TimesUnreadable > 0)
            Warn(BenchLogWarningKind.TimeBase, $"{Count(samples.TimesUnreadable, "sample")} without a readable time; no sum uses {(samples.TimesUnreadable == 1 ? "it" : "them")}.");
        if (samples.Doubled > 0)
            Warn(BenchLogWarningKind.Doubled, $"{Count(samples.Doubled, "doubled sample")}: the same time and values as the line before.");
        if (samples.SameTime > 0)
            Warn(BenchLogWarningKind.Doubled, $"{Count(samples.SameTime, "sample")} with the time of the sample before and other values; such a step has no length.");
        if (samples.Midnights > 0)
            _assumptions.Add($"A time of day that goes back belongs to the next day, as was answered: {Times(samples.Midnights)}.");
    }

    private void SayUnusable()
    {
        var meters = new[] { BenchLogRole.Voltage, BenchLogRole.Current, BenchLogRole.Power, BenchLogRole.InputVoltage, BenchLogRole.InputCurrent, BenchLogRole.InputPower }
            .Select(samples.Meter).OfType<LogMeter>().Where(meter => meter.Unusable > 0).ToList();
        if (meters.Count > 0)
        {
            var kinds = new[]
            {
                (meters.Sum(meter => meter.Overloads), "overload (beyond the range, not 0)"), (meters.Sum(meter => meter.NotNumbers), "not a number"),
                (meters.Sum(meter => meter.Empty), "empty"), (meters.Sum(meter => meter.Words), "not readable"),
            }.Where(kind => kind.Item1 > 0).Select(kind => $"{Number(kind.Item1)} {kind.Item2}");
            Warn(BenchLogWarningKind.Unusable, $"{Count(meters.Sum(meter => meter.Unusable), "unusable value")}: {string.Join(", ", kinds)}; sums join their neighbours.");
        }

        if (samples.AutoRange is not { } range)
            return;
        var overloads = Enum.GetValues<LogQuantity>().Sum(quantity => range.Of(quantity).Overloads);
        if (overloads > 0)
            Warn(BenchLogWarningKind.Unusable, $"{Count(overloads, "value")} OL: overload, beyond the range, not 0.");
        if (range.Unusable > 0)
            Warn(BenchLogWarningKind.Unusable, $"{Count(range.Unusable, "value")} without a usable number or unit.");
        if (range.IsMixed)
            Warn(BenchLogWarningKind.Missing, "The value column measures different quantities from row to row, so charge and energy cannot be told.");
    }

    private double? Duration()
    {
        if (layout.Time is null)
        {
            Warn(BenchLogWarningKind.Missing, "There is no time column, so duration, charge and energy cannot be told.");
            return null;
        }

        if (samples.StepsBack > 0)
            SayOrder();
        if (IsOrderDoubtful)
            return null;
        if (Positive(samples.Forward) is { } forward)
            return forward;
        Warn(BenchLogWarningKind.Missing, "Time does not move on between any two samples, so duration, charge and energy cannot be told.");
        return null;
    }

    private void SayOrder()
    {
        var step = Seconds(samples.LongestStepBack);
        var isMixed = samples.AutoRange is { IsMixed: true };
        var sums = isMixed || (samples.ChargeAs ?? samples.EnergyWs) is null ? "" : $" and hold {Sums(Hours(samples.ChargeAs), Hours(samples.EnergyWs))}";
        var forward = $"The stretches in which time runs forward last {Seconds(samples.Forward)} s together{sums}.";
        var times = samples.StepsBack == 1 ? $"Time goes back by {step} s in line {Number(samples.StepBackLine)}" : $"Time goes back {Times(samples.StepsBack)}, most by {step} s in line {Number(samples.StepBackLine)}";
        var why = layout.Time!.Form switch
        {
            LogTimeForm.Clock => "the next day, or a clock that was reset?",
            _ when samples.StepsBackToStart => "a counter reset, a new recording?",
            _ => "a clock that was set back, or lines out of order?",
        };
        if (IsOrderDoubtful)
            Warn(BenchLogWarningKind.Order, $"{times} (step back): {why} Nothing is sorted; duration, charge and energy wait for the answer. {forward}", isQuestion: true);
        else
            Warn(BenchLogWarningKind.Order, $"{times} (step back). As answered, the stretches are added and nothing is integrated over the step.");
    }

    private double? Charge()
    {
        if (samples.AutoRange is { IsMixed: true } || layout.Time is null || IsOrderDoubtful)
            return null;
        if (Hours(samples.ChargeAs) is { } charge)
            return charge;
        if (layout.IsAlternating)
        {
            Warn(BenchLogWarningKind.Missing, "Alternating current carries no net charge, so no charge is told.");
            return null;
        }

        return Counter(BenchLogRole.Charge, "charge") ?? MissingCurrent();
    }

    private double? Energy()
    {
        if (samples.AutoRange is { IsMixed: true } || layout.Time is null || IsOrderDoubtful)
            return null;
        if (Hours(samples.EnergyWs) is { } energy)
            return energy;
        if (Counter(BenchLogRole.Energy, "energy") is { } counted)
            return counted;
        if (layout.IsAlternating && !samples.HasPower)
            Warn(BenchLogWarningKind.Missing, "The product of rms voltage and current is apparent power: no energy and no power until a power is given.");
        else if (samples.HasCurrent && !samples.HasVoltage)
            Warn(BenchLogWarningKind.Missing, "No voltage: no energy and no power until a voltage is given.");
        else if (!_energyIsSaid)
            Warn(BenchLogWarningKind.Missing, "No two samples have a usable power, so the energy cannot be told.");
        return null;
    }

    private double? MissingCurrent()
    {
        _energyIsSaid = samples.AutoRange is null && !samples.HasPower && !samples.HasCurrent;
        if (samples.AutoRange is not null || samples.HasCurrent)
            Warn(BenchLogWarningKind.Missing, "No two samples have a usable current, so the charge cannot be told.");
        else if (samples.HasVoltage)
            Warn(BenchLogWarningKind.Missing, "No current: no charge, no energy and no power.");
        else if (samples.HasPower)
            Warn(BenchLogWarningKind.Missing, "No current and no voltage beside the power: no charge.");
        else
            Warn(BenchLogWarningKind.Missing, "No column is known to be a voltage, a current or a power; say which is what.", isQuestion: true);
        return null;
    }

    private double? Counter(BenchLogRole role, string what)
    {
        if (samples.Meter(role) is not { } meter || double.IsNaN(meter.First))
            return null;
        if (!meter.NeverFalls || meter.Last <= meter.First)
        {
            Warn(BenchLogWarningKind.Missing, $"The counter “{meter.Column.Title}” starts again or stands still; the {what} is not taken from it.");
            return null;
        }

        Warn(BenchLogWarningKind.WorkedOut, $"The {what} is the difference of the counter “{meter.Column.Title}”, not worked out from samples.");
        return meter.Last - meter.First;
    }

    private BenchLogSum? SayGaps(bool isMixed)
    {
        var (count, length, chargeAs, energyWs) = samples.Gaps();
        if (count == 0)
            return null;
        var sum = new BenchLogSum(Positive(samples.Forward - length), isMixed ? null : Hours(chargeAs), isMixed ? null : Hours(energyWs));
        var integrated = IsOrderDoubtful || isMixed || (sum.ChargeAh is null && sum.EnergyWh is null)
            ? "The duration counts it."
            : $"The sums integrate over {(count == 1 ? "it" : "them")}; with the gap{(count == 1 ? "" : "s")} left out they are {Sums(sum.ChargeAh, sum.EnergyWh)}.";
        Warn(BenchLogWarningKind.Gap, $"{Count(count, "gap")} longer than five times the median step of {Seconds(samples.MedianStep!.Value)} s; the longest, {Seconds(samples.LongestStep)} s, ends in line {Number(samples.LongestStepLine)}. {integrated}");
        return sum;
    }

    private void SayDirection()
    {
        if (samples.HasCurrent && samples.Meter(BenchLogRole.Current) is null)
            Warn(BenchLogWarningKind.WorkedOut, "The current is worked out as power by voltage, not measured.");
        if (samples.HasVoltage && samples.Meter(BenchLogRole.Voltage) is null && samples.AutoRange is null)
            Warn(BenchLogWarningKind.WorkedOut, "The voltage is worked out as power by current, not measured.");
        if (samples.Current.Count == 0)
            return;
        var (low, high) = (samples.Current.Minimum, samples.Current.Maximum);
        if (samples.AutoRange is null && low < 0 && high > 0 && Math.Min(-low, high) > Noticeable * Math.Max(-low, high))
            Warn(BenchLogWarningKind.Direction, $"The current turns negative (lowest {Short(low)} A); the sums are net, with its sign.");
        else if (high <= 0 && low < 0)
            _assumptions.Add("The current is never positive; charge and energy keep its sign.");
    }

    private double? MeanVoltage(double? charge, double? energy)
    {
        if (samples.Voltage.Count == 0)
            return null;
        var samplesMean = samples.Voltage.Span()!.Mean;
        if (samples.AutoRange is not null || IsOrderDoubtful)
            return samples.AutoRange is null ? samplesMean : null;
        if (layout.IsAlternating || (samples.Meter(BenchLogRole.Current) is null && samples.Meter(BenchLogRole.Power) is null))
        {
            _assumptions.Add("The mean voltage is that of the samples, as there is no direct current to weigh it with.");
            return samplesMean;
        }

        if (charge is not { } ampereHours || energy is not { } wattHours)
            return samplesMean;
        var mean = wattHours / ampereHours;
        var room = Rounding * Math.Max(Math.Abs(samples.Voltage.Minimum), Math.Abs(samples.Voltage.Maximum));
        if (mean >= samples.Voltage.Minimum - room && mean <= samples.Voltage.Maximum + room)
            return mean;
        Warn(BenchLogWarningKind.Missing, ampereHours == 0
            ? "No net charge flows, so energy by charge is no mean voltage."
            : "Energy by charge lies outside the measured voltages, as it can where the current changes its direction; it is no mean voltage.");
        return null;
    }

    private double? Peak()
    {
        if (samples.Power is not { Count: > 0 } power)
            return null;
        return power.Maximum > 0 ? power.Maximum : power.Minimum;
    }

    private BenchLogEfficiency? Efficiency()
    {
        if (!samples.HasPair || layout.Time is null)
            return null;
        _assumptions.Add("Input and output are logged: energy, charge, mean voltage and peak are those of the output.");
        if (IsOrderDoubtful || samples.Paired is not var (input, output))
        {
            if (!IsOrderDoubtful)
                Warn(BenchLogWarningKind.Efficiency, "No two samples have both input and output, so the efficiency cannot be told.");
            return null;
        }

        double? ratio = input > 0 ? output / input : null;
        if (ratio is null)
            Warn(BenchLogWarningKind.Efficiency, "The energy at the input is not above zero, so there is no efficiency.");
        else if (ratio > 1)
            Warn(BenchLogWarningKind.Efficiency, $"The efficiency is above one ({Short(ratio.Value)}): a column, a sign or a calibration is wrong, or stored energy is in play.");
        return new BenchLogEfficiency(input / SecondsPerHour, output / SecondsPerHour, ratio is { } value && double.IsFinite(value) ? value : null);
    }

    private void SayBounds(BenchLog log)
    {
        if (samples.Segments.Count > log.Segments.Count)
            Warn(BenchLogWarningKind.Layout, $"Of {Number(samples.Segments.Count)} segments the first {Number(log.Segments.Count)} are listed.");
        if (samples.Steps.NotKept > 0)
            Warn(BenchLogWarningKind.Layout, $"Of {Number(samples.Steps.NotKept + log.Steps.Count)} settled stretches the first {Number(log.Steps.Count)} are listed.");
    }

    private void Warn(BenchLogWarningKind kind, string text, bool isQuestion = false) => _warnings.Add(new BenchLogWarning(kind, text, isQuestion));

    private static double? Hours(double? seconds) => seconds / SecondsPerHour;

    private static double? Positive(double value) => value > 0 ? value : null;

    private static string Sums(double? chargeAh, double? energyWh) => (chargeAh, energyWh) switch
    {
        (null, null) => "no sums",
        ({ } charge, null) => $"{Short(charge * 1000)} mAh",
        (null, { } energy) => $"{Short(energy)} Wh",
        ({ } charge, { } energy) => $"{Short(charge * 1000)} mAh and {Short(energy)} Wh",
    };

    private static string Count(long count, string noun) => $"{Number(count)} {(count == 1 ? noun : noun + "s")}";

    private static string Times(long count) => count == 1 ? "once" : $"{Number(count)} times";

    private static string Number(long value) => value.ToString(CultureInfo.InvariantCulture);

    private static string Seconds(double value) => Math.Round(value, 6).ToString("0.######", CultureInfo.InvariantCulture);

    private static string Short(double value) => value.ToString("G5", CultureInfo.InvariantCulture);
}
