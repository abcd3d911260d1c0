namespace Catalogue.Domain.BenchLogs;

/// <summary>Lowest, highest and plain mean of the usable samples of one quantity.</summary>
/// <param name="Samples">How many usable samples there are, from 0.</param>
/// <param name="Overloads">How many more were beyond the instrument's range.</param>
/// <param name="Minimum">The lowest in the base unit; null where every sample was beyond the range.</param>
/// <param name="Maximum">The highest, likewise.</param>
/// <param name="Mean">The mean of the samples, each counted once, likewise.</param>
public sealed record BenchLogSpan(long Samples, long Overloads, double? Minimum, double? Maximum, double? Mean);
