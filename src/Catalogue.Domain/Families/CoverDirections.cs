using Catalogue.Domain.Components;

namespace Catalogue.Domain.Families;

/// <summary>Which ratings a stand-in must cover, and in which direction.</summary>
/// <remarks>
/// House rule. More is not always better: a fuse of a higher current, a varistor or a Zener diode of a higher voltage protects less, so these must be
/// the same.
/// </remarks>
public static class CoverDirections
{
    /// <summary>The direction in which a rating covers another of its kind.</summary>
    /// <param name="kind">The kind of rating.</param>
    /// <param name="functionClass">What the parts are.</param>
    public static CoverDirection Of(RatingKind kind, FunctionClass functionClass) => kind switch
    {
        RatingKind.RatedCurrent when functionClass.Is(FunctionClass.Fuse) => CoverDirection.Within,
        RatingKind.RatedVoltage or RatingKind.RatedVoltageAc when functionClass is FunctionClass.Varistor or FunctionClass.SignalDiode => CoverDirection.Within,
        RatingKind.RatedCurrent or RatingKind.RatedVoltage or RatingKind.RatedVoltageAc or RatingKind.RatedPower or RatingKind.BreakingCurrent or RatingKind.MaxTemperature
            or RatingKind.RatedLife or RatingKind.CellCapacity => CoverDirection.AtLeast,
        RatingKind.Resistance when functionClass.Is(FunctionClass.Resistor) || functionClass is FunctionClass.Thermistor => CoverDirection.Within,
        RatingKind.Capacitance when functionClass.Is(FunctionClass.Capacitor) => CoverDirection.Within,
        RatingKind.Inductance or RatingKind.CellVoltage => CoverDirection.Within,
        RatingKind.Resistance or RatingKind.Capacitance or RatingKind.OnResistance or RatingKind.CellResistance or RatingKind.ForwardVoltage or RatingKind.ThermalResistance or RatingKind.TemperatureSlope
            or RatingKind.TemperatureFactor or RatingKind.TemperatureCoefficient => CoverDirection.AtMost,
        _ => CoverDirection.NotCompared,
    };

    /// <summary>The ratings that decide for a class: those not known are said. <see cref="RatingKind.RatedVoltage"/> stands for ac as well.</summary>
    public static IReadOnlyList<RatingKind> Deciding(FunctionClass functionClass) => functionClass switch
    {
        _ when functionClass.Is(FunctionClass.Fuse) => [RatingKind.RatedCurrent, RatingKind.RatedVoltage, RatingKind.BreakingCurrent],
        FunctionClass.Switch => [RatingKind.RatedVoltage, RatingKind.RatedCurrent, RatingKind.OnResistance],
        FunctionClass.Rectifier => [RatingKind.RatedVoltage, RatingKind.RatedCurrent, RatingKind.ForwardVoltage],
        _ when functionClass.Is(FunctionClass.Capacitor) => [RatingKind.Capacitance, RatingKind.RatedVoltage],
        _ when functionClass.Is(FunctionClass.Resistor) => [RatingKind.Resistance, RatingKind.RatedPower],
        FunctionClass.Inductor => [RatingKind.Inductance, RatingKind.RatedCurrent],
        FunctionClass.Cell => [RatingKind.CellCapacity, RatingKind.CellVoltage, RatingKind.RatedCurrent],
        FunctionClass.Thermistor => [RatingKind.Resistance],
        FunctionClass.Varistor or FunctionClass.SignalDiode or FunctionClass.Optocoupler or FunctionClass.Controller or FunctionClass.ProtocolChip or FunctionClass.CellProtection
            or FunctionClass.Microcontroller => [RatingKind.RatedVoltage],
        _ => [RatingKind.RatedVoltage, RatingKind.RatedCurrent],
    };

    /// <summary>
    /// True where class and ratings say what a part does. Two controllers of one voltage may have nothing in common but that: chips and parts with a
    /// function of their own need more.
    /// </summary>
    public static bool TellEnough(FunctionClass functionClass) =>
        functionClass.Is(FunctionClass.Fuse) || functionClass.Is(FunctionClass.Switch) || functionClass.Is(FunctionClass.Capacitor) || functionClass.Is(FunctionClass.Resistor)
        || functionClass is FunctionClass.Rectifier or FunctionClass.SignalDiode or FunctionClass.Transistor or FunctionClass.Inductor or FunctionClass.Varistor or FunctionClass.Thermistor or FunctionClass.Cell;
}
