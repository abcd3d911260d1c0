namespace Catalogue.Domain.Stress;

/// <summary>A voltage or ratio that the stress of a position is made of.</summary>
public enum StressInput
{
    /// <summary>Highest voltage of the dc bus, in volt.</summary>
    BusVoltage,

    /// <summary>Highest input voltage, in volt.</summary>
    InputVoltage,

    /// <summary>Highest output voltage, in volt.</summary>
    OutputVoltage,

    /// <summary>Highest mains voltage, in volt rms.</summary>
    MainsVoltage,

    /// <summary>Output voltage as it appears across the primary, in volt; or made of turns ratio, output and forward voltage.</summary>
    ReflectedVoltage,

    /// <summary>Turns of the primary over turns of the secondary.</summary>
    TurnsRatio,

    /// <summary>Forward voltage of the secondary rectifier, in volt.</summary>
    ForwardVoltage,

    /// <summary>Spike, ringing or ripple on top, in volt.</summary>
    Overshoot,
}
