namespace Catalogue.Domain.Components;

/// <summary>What kind of part it is: a small vocabulary with parents (<see cref="FunctionClasses.Parent"/>).</summary>
public enum FunctionClass
{
    /// <summary>A fuse whose style is not known.</summary>
    Fuse,

    /// <summary>A blade fuse.</summary>
    BladeFuse,

    /// <summary>A cartridge fuse rated the UL 248-14 way.</summary>
    UlCartridgeFuse,

    /// <summary>A cartridge fuse rated the IEC 60127-2 way.</summary>
    IecCartridgeFuse,

    /// <summary>A resettable fuse (PTC).</summary>
    ResettableFuse,

    /// <summary>A controller of a converter.</summary>
    Controller,

    /// <summary>A regulator with its switch or pass element inside.</summary>
    Regulator,

    /// <summary>A chip that speaks a charging protocol.</summary>
    ProtocolChip,

    /// <summary>A chip that protects cells.</summary>
    CellProtection,

    /// <summary>A microcontroller.</summary>
    Microcontroller,

    /// <summary>A power transistor; taken as a MOSFET unless it is said to be bipolar.</summary>
    Switch,

    /// <summary>A bipolar power transistor: rated by V_CEO and I_C, without an on-resistance.</summary>
    BipolarTransistor,

    /// <summary>A rectifier or diode in the power path.</summary>
    Rectifier,

    /// <summary>A small-signal or Zener diode.</summary>
    SignalDiode,

    /// <summary>A small-signal transistor.</summary>
    Transistor,

    /// <summary>A capacitor of unknown kind.</summary>
    Capacitor,

    /// <summary>A ceramic capacitor.</summary>
    CeramicCapacitor,

    /// <summary>An aluminium electrolytic or polymer capacitor.</summary>
    AluminiumCapacitor,

    /// <summary>A tantalum capacitor.</summary>
    TantalumCapacitor,

    /// <summary>A film capacitor.</summary>
    FilmCapacitor,

    /// <summary>An X or Y capacitor.</summary>
    SafetyCapacitor,

    /// <summary>A resistor.</summary>
    Resistor,

    /// <summary>A resistor that measures current.</summary>
    Shunt,

    /// <summary>An inductor.</summary>
    Inductor,

    /// <summary>A transformer.</summary>
    Transformer,

    /// <summary>An optocoupler or digital isolator.</summary>
    Optocoupler,

    /// <summary>A varistor.</summary>
    Varistor,

    /// <summary>A thermistor.</summary>
    Thermistor,

    /// <summary>A relay.</summary>
    Relay,

    /// <summary>A connector.</summary>
    Connector,

    /// <summary>A cell or a pack of them.</summary>
    Cell,

    /// <summary>A light or a display.</summary>
    Indicator,

    /// <summary>A crystal or resonator.</summary>
    Timing,

    /// <summary>A mechanical part.</summary>
    Mechanical,

    /// <summary>Anything else.</summary>
    OtherPart,
}
