namespace Catalogue.Domain.BenchLogs;

/// <summary>The average efficiency of an external power supply at 100, 75, 50 and 25 % of its nameplate output current.</summary>
/// <remarks><c>η = ¼ Σ P_out / P_in</c>: the mean of the four ratios. Source: test method of US 10 CFR 430, subpart B, appendix Z.</remarks>
public static class FourPointAverage
{
    /// <summary>The four shares of the nameplate current, heaviest first.</summary>
    public static IReadOnlyList<double> Loads { get; } = [1, 0.75, 0.5, 0.25];

    /// <summary>What came of four points.</summary>
    public abstract record Result
    {
        private Result()
        {
        }

        /// <summary>The average.</summary>
        /// <param name="Average">Mean of the four efficiencies, a ratio; above 1 where a measurement is wrong.</param>
        /// <param name="Efficiencies">Those at 100, 75, 50 and 25 %.</param>
        public sealed record Computed(double Average, IReadOnlyList<double> Efficiencies) : Result;

        /// <summary>There is none.</summary>
        /// <param name="Reason">Why.</param>
        public sealed record Unknown(string Reason) : Result;
    }

    /// <summary>Averages four measured points.</summary>
    /// <param name="outputW">Output power in watt at 100, 75, 50 and 25 % load.</param>
    /// <param name="inputW">Input power in watt at the same loads.</param>
    public static Result Of(IReadOnlyList<double> outputW, IReadOnlyList<double> inputW)
    {
        ArgumentNullException.ThrowIfNull(outputW);
        ArgumentNullException.ThrowIfNull(inputW);
        if (outputW.Count != Loads.Count || inputW.Count != Loads.Count)
            return new Result.Unknown("Four points are needed: 100, 75, 50 and 25 % of the nameplate output current.");
        if (outputW.Concat(inputW).Any(power => !(power > 0) || power > LogMeter.Largest))
            return new Result.Unknown("Every power must be a number of watts above zero.");
        double[] efficiencies = [.. outputW.Zip(inputW, (output, input) => output / input)];
        return new Result.Computed(efficiencies.Average(), efficiencies);
    }

    /// <summary>Averages the points of a nameplate: the output powers are its voltage times the four currents.</summary>
    /// <param name="outputV">Nameplate output voltage in volt.</param>
    /// <param name="outputA">Nameplate output current in ampere.</param>
    /// <param name="inputW">Input power in watt at 100, 75, 50 and 25 % load.</param>
    public static Result OfNameplate(double outputV, double outputA, IReadOnlyList<double> inputW) =>
        Of([.. Loads.Select(load => outputV * outputA * load)], inputW);
}
