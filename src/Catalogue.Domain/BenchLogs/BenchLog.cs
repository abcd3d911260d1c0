namespace Catalogue.Domain.BenchLogs;

/// <summary>What a log of time, voltage and current says, with what was assumed on the way.</summary>
/// <remarks>
/// <para><c>Ah = Σ ½ (i_k + i_k+1) Δt / 3600</c>, <c>Wh = Σ ½ (p_k + p_k+1) Δt / 3600</c> with <c>p_k = v_k · i_k</c>: the trapezoid rule over
/// the stated time. Source: definition of charge and energy. Signs are those of the log.</para>
/// <para>Sums go over every pair of neighbouring usable samples, pauses included. Whatever cannot be told is null, and a warning says why.</para>
/// </remarks>
public sealed record BenchLog
{
    /// <summary>The columns in the order of the file.</summary>
    public required IReadOnlyList<BenchLogColumn> Columns { get; init; }

    /// <summary>Lines with samples, from 1; an unusable or cut one counts too.</summary>
    public required long Samples { get; init; }

    /// <summary>Those with as many cells as the header has.</summary>
    public required long CompleteSamples { get; init; }

    /// <summary>Those with a usable voltage and a usable current, measured or worked out.</summary>
    public required long UsableSamples { get; init; }

    /// <summary>From the first sample to the last in seconds; null where there is no time or its order is doubtful.</summary>
    public double? DurationS { get; init; }

    /// <summary>The median of the steps forward in time, in seconds; see <see cref="LogStepLengths"/> for how close it is.</summary>
    public double? MedianStepS { get; init; }

    /// <summary>The first sample's date and time as written, or the one the lines above the header give; null where no date is known.</summary>
    public DateTime? Start { get; init; }

    /// <summary>Charge in ampere-hours, or null.</summary>
    public double? ChargeAh { get; init; }

    /// <summary>Energy in watt-hours, or null.</summary>
    public double? EnergyWh { get; init; }

    /// <summary>
    /// Mean voltage in volt: energy by charge, and the mean of the samples where no current is known. Null where the current turns and the
    /// quotient leaves the range of the measured voltages.
    /// </summary>
    public double? MeanVoltageV { get; init; }

    /// <summary>The highest power of a sample in watt; the lowest where no sample has a power above zero.</summary>
    public double? PeakW { get; init; }

    /// <summary>Voltage in volt, or null where none was read.</summary>
    public BenchLogSpan? Voltage { get; init; }

    /// <summary>Current in ampere, or null.</summary>
    public BenchLogSpan? Current { get; init; }

    /// <summary>Power in watt, or null.</summary>
    public BenchLogSpan? Power { get; init; }

    /// <summary>Resistance in ohm, which meters that change their function log too, or null.</summary>
    public BenchLogSpan? Resistance { get; init; }

    /// <summary>Sums without pauses longer than five times the median step; null where there is no such pause.</summary>
    public BenchLogSum? WithoutGaps { get; init; }

    /// <summary>Sums of the stretches in which time runs forward; null where time never goes back.</summary>
    public BenchLogSum? ForwardOnly { get; init; }

    /// <summary>Input against output, or null where the log has not both.</summary>
    public BenchLogEfficiency? Efficiency { get; init; }

    /// <summary>Parts the log numbers or names, in order; empty where it names none. At most <see cref="LogSegments.MaxSegments"/>.</summary>
    public required IReadOnlyList<BenchLogSegment> Segments { get; init; }

    /// <summary>Settled stretches in order; at most <see cref="LogSteps.MaxSteps"/>.</summary>
    public required IReadOnlyList<BenchLogStep> Steps { get; init; }

    /// <summary>The log in at most <see cref="LogTrace.MaxPoints"/> points, for a plot.</summary>
    public required IReadOnlyList<BenchLogTracePoint> Trace { get; init; }

    /// <summary>The lines above the header as written; at most 32.</summary>
    public required IReadOnlyList<string> Preamble { get; init; }

    /// <summary>The IANA name of the encoding.</summary>
    public required string Encoding { get; init; }

    /// <summary>What separates the cells; null where each line has one.</summary>
    public required char? Delimiter { get; init; }

    /// <summary>What separates whole from fraction: <c>.</c> or <c>,</c>.</summary>
    public required char DecimalMark { get; init; }

    /// <summary>How times were read, in words; null where there are none.</summary>
    public string? TimeBase { get; init; }

    /// <summary>What was taken for granted, in words.</summary>
    public required IReadOnlyList<string> Assumptions { get; init; }

    /// <summary>What a reader must know, questions among it.</summary>
    public required IReadOnlyList<BenchLogWarning> Warnings { get; init; }
}
