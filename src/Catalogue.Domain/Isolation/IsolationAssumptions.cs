using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Isolation;

/// <summary>What a required distance depends on. Chosen by the reviewer and printed with the note; null where not said.</summary>
/// <remarks>Source: the inputs of IEC 60664-1.</remarks>
public sealed record IsolationAssumptions
{
    /// <summary>Working voltage across the path, in volt rms.</summary>
    public Interval? WorkingVoltage { get; init; }

    /// <summary>What the insulation is there for.</summary>
    public InsulationKind? Insulation { get; init; }

    /// <summary>Overvoltage category, 1 to 4.</summary>
    public int? OvervoltageCategory { get; init; }

    /// <summary>Pollution degree, 1 to 3.</summary>
    public int? PollutionDegree { get; init; }

    /// <summary>Material group; needed for creepage.</summary>
    public MaterialGroup? Material { get; init; }

    /// <summary>Highest altitude of use, in metre.</summary>
    public double? Altitude { get; init; }

    /// <summary>Highest frequency across the path, in hertz.</summary>
    public double? Frequency { get; init; }

    /// <summary>True when coating or potting covers the path; null where not said.</summary>
    public bool? IsCoated { get; init; }
}
