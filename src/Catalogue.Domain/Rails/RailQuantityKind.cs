namespace Catalogue.Domain.Rails;

/// <summary>What a quantity of a rail speaks of.</summary>
public enum RailQuantityKind
{
    /// <summary>The lowest voltage in use, in volt: a pack's cut-off, the low end of the mains. Rms on mains.</summary>
    MinVoltage,

    /// <summary>The nominal voltage, in volt. Rms on mains.</summary>
    NominalVoltage,

    /// <summary>The highest voltage in use, in volt. Rms on mains.</summary>
    MaxVoltage,

    /// <summary>The highest steady current, in ampere; rms on mains.</summary>
    MaxCurrent,

    /// <summary>The highest steady power that the rail's load puts out, in watt.</summary>
    MaxPower,

    /// <summary>Efficiency from the rail to that output, a ratio of 0 to 1.</summary>
    Efficiency,

    /// <summary>Power factor of the rail's load, a ratio of 0 to 1; on dc it is 1 and need not be given.</summary>
    PowerFactor,

    /// <summary>Frequency of the mains that feeds a bus or is fed by it, in hertz; its power pulses at twice that.</summary>
    LineFrequency,

    /// <summary>Mains that a rectifier makes a dc bus from, in volt rms: lowest, nominal and highest of their range. A bus behind a power-factor stage has none.</summary>
    LineVoltage,

    /// <summary>What bleeds the rail's capacitors when it is switched off, in ohm.</summary>
    BleedResistance,

    /// <summary>Resistance of the path from a pack's cells to its first fuse and back, cells left out, in ohm; zero makes a short-circuit current an upper one.</summary>
    PathResistance,

    /// <summary>The current that the rail can deliver into a short, in ampere; rms on mains.</summary>
    ProspectiveCurrent,
}
