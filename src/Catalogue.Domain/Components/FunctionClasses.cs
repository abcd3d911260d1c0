namespace Catalogue.Domain.Components;

/// <summary>The words and the parents of the function classes.</summary>
public static class FunctionClasses
{
    private static readonly (FunctionClass Class, string Word, FunctionClass? Parent)[] All =
    [
        (FunctionClass.Fuse, "fuse", null),
        (FunctionClass.BladeFuse, "blade fuse", FunctionClass.Fuse),
        (FunctionClass.UlCartridgeFuse, "cartridge fuse, UL style", FunctionClass.Fuse),
        (FunctionClass.IecCartridgeFuse, "cartridge fuse, IEC style", FunctionClass.Fuse),
        (FunctionClass.ResettableFuse, "resettable fuse", FunctionClass.Fuse),
        (FunctionClass.Controller, "controller", null),
        (FunctionClass.Regulator, "regulator", null),
        (FunctionClass.ProtocolChip, "charging protocol chip", FunctionClass.Controller),
        (FunctionClass.CellProtection, "cell protection", null),
        (FunctionClass.Microcontroller, "microcontroller", null),
        (FunctionClass.Switch, "switch", null),
        (FunctionClass.BipolarTransistor, "bipolar power transistor", FunctionClass.Switch),
        (FunctionClass.Rectifier, "rectifier", null),
        (FunctionClass.SignalDiode, "signal diode", null),
        (FunctionClass.Transistor, "signal transistor", null),
        (FunctionClass.Capacitor, "capacitor", null),
        (FunctionClass.CeramicCapacitor, "ceramic capacitor", FunctionClass.Capacitor),
        (FunctionClass.AluminiumCapacitor, "aluminium capacitor", FunctionClass.Capacitor),
        (FunctionClass.TantalumCapacitor, "tantalum capacitor", FunctionClass.Capacitor),
        (FunctionClass.FilmCapacitor, "film capacitor", FunctionClass.Capacitor),
        (FunctionClass.SafetyCapacitor, "safety capacitor", FunctionClass.Capacitor),
        (FunctionClass.Resistor, "resistor", null),
        (FunctionClass.Shunt, "current shunt", FunctionClass.Resistor),
        (FunctionClass.Inductor, "inductor", null),
        (FunctionClass.Transformer, "transformer", null),
        (FunctionClass.Optocoupler, "optocoupler", null),
        (FunctionClass.Varistor, "varistor", null),
        (FunctionClass.Thermistor, "thermistor", null),
        (FunctionClass.Relay, "relay", null),
        (FunctionClass.Connector, "connector", null),
        (FunctionClass.Cell, "cell", null),
        (FunctionClass.Indicator, "indicator", null),
        (FunctionClass.Timing, "crystal or resonator", null),
        (FunctionClass.Mechanical, "mechanical part", null),
        (FunctionClass.OtherPart, "other part", null),
    ];

    /// <summary>The words a person reads, such as <c>blade fuse</c>.</summary>
    public static string Word(this FunctionClass functionClass) => All[(int)functionClass].Word;

    /// <summary>The wider class, or null at the top.</summary>
    public static FunctionClass? Parent(this FunctionClass functionClass) => All[(int)functionClass].Parent;

    /// <summary>True when the class is the other one or lies within it.</summary>
    public static bool Is(this FunctionClass functionClass, FunctionClass other) =>
        functionClass == other || functionClass.Parent() == other;
}
