namespace Catalogue.Domain.Components;

/// <summary>What a quantity of a component speaks of.</summary>
public enum RatingKind
{
    /// <summary>The current it is rated for, in ampere.</summary>
    RatedCurrent,

    /// <summary>The voltage it is rated for, in volt: dc or peak, unless the condition says ac.</summary>
    RatedVoltage,

    /// <summary>The ac voltage it is rated for, in volt rms.</summary>
    RatedVoltageAc,

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

    /// <summary>How long it is rated to last at its highest temperature, in second.</summary>
    RatedLife,

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

    /// <summary>The temperature of the part itself in use, case or core, in °C.</summary>
    PartTemperature,

    /// <summary>Capacity of one cell, in ampere-hour.</summary>
    CellCapacity,

    /// <summary>Nominal voltage of one cell, in volt; where the cell's own sheet differs from its chemistry.</summary>
    CellVoltage,

    /// <summary>Internal resistance of one cell, in ohm; the condition says at which charge and frequency.</summary>
    CellResistance,

    /// <summary>The highest voltage across the part in use, ringing included, in volt; measured, or worked out by the reviewer.</summary>
    PeakVoltage,

    /// <summary>The peak of the ripple on the dc across the part, in volt.</summary>
    RippleVoltage,

    /// <summary>The spike on top of the working voltage, in volt.</summary>
    SpikeVoltage,

    /// <summary>The output voltage behind the part's winding, in volt.</summary>
    OutputVoltage,

    /// <summary>Primary to secondary turns, a ratio above zero.</summary>
    TurnsRatio,

    /// <summary>The share of the period for which the part conducts, a ratio of 0 to 1.</summary>
    DutyCycle,

    /// <summary>The rms current through the place in use, all parallel parts together, in ampere.</summary>
    RmsCurrent,

    /// <summary>The mean current through the place in use, all parallel parts together, in ampere.</summary>
    MeanCurrent,

    /// <summary>Forward voltage at that current, in volt.</summary>
    ForwardVoltage,

    /// <summary>On-resistance hot, divided by that at 25 °C; a ratio from 1.</summary>
    TemperatureFactor,

    /// <summary>How fast the on-resistance rises with the junction's temperature, per °C; instead of the temperature factor.</summary>
    TemperatureCoefficient,

    /// <summary>Thermal resistance from junction to ambient as mounted, in °C/W.</summary>
    ThermalResistance,
}
