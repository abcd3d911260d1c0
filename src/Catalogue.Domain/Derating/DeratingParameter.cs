namespace Catalogue.Domain.Derating;

/// <summary>What of a part is derated.</summary>
public enum DeratingParameter
{
    /// <summary>Voltage, dc with peak ripple.</summary>
    Voltage,

    /// <summary>Steady current.</summary>
    Current,

    /// <summary>Current lost per °C.</summary>
    CurrentTemperatureSlope,

    /// <summary>Ripple current.</summary>
    RippleCurrent,

    /// <summary>Distance below the rated temperature.</summary>
    TemperatureMargin,

    /// <summary>Power.</summary>
    Power,

    /// <summary>Drain-source voltage.</summary>
    DrainSourceVoltage,

    /// <summary>Drain-gate voltage.</summary>
    DrainGateVoltage,

    /// <summary>Gate-source voltage.</summary>
    GateSourceVoltage,

    /// <summary>Drain current.</summary>
    DrainCurrent,

    /// <summary>Peak inverse voltage.</summary>
    ReverseVoltage,

    /// <summary>Forward current.</summary>
    ForwardCurrent,

    /// <summary>Junction temperature.</summary>
    JunctionTemperature,
}
