namespace Catalogue.Domain.Components;

/// <summary>What a quantity of a component speaks of.</summary>
public enum RatingKind
{
    /// <summary>The current it is rated for, in ampere.</summary>
    RatedCurrent,

    /// <summary>The voltage it is rated for, in volt; whether ac or dc stands in the condition.</summary>
    RatedVoltage,

    /// <summary>The capacitance, in farad.</summary>
    Capacitance,

    /// <summary>The resistance, in ohm.</summary>
    Resistance,

    /// <summary>The inductance, in henry.</summary>
    Inductance,

    /// <summary>The power it is rated for, in watt.</summary>
    RatedPower,

    /// <summary>On-resistance of one switch, in ohm.</summary>
    OnResistance,

    /// <summary>The highest temperature, in °C.</summary>
    MaxTemperature,

    /// <summary>The current it can break, in ampere.</summary>
    BreakingCurrent,

    /// <summary>How evenly paralleled parts share the current, a ratio of 0 to 1. A judgement of the reviewer, never assumed.</summary>
    CurrentSharing,

    /// <summary>The derating to use instead of the convention, a ratio of 0 to 1.</summary>
    Derating,

    /// <summary>How fast the allowed current falls above 25 °C, per °C.</summary>
    TemperatureSlope,

    /// <summary>The temperature around the part, in °C.</summary>
    AmbientTemperature,
}
