namespace Catalogue.Domain.Topologies;

/// <summary>A tell-tale of a converter stage, computed from its components, never from free text alone.</summary>
public enum Cue
{
    /// <summary>A high-frequency transformer with two or more windings.</summary>
    HfTransformer,

    /// <summary>Exactly one primary switch rated 400 V or more.</summary>
    OneHvPrimarySwitch,

    /// <summary>Fast diode, resistor and capacitor across the primary.</summary>
    RcdClamp,

    /// <summary>An optocoupler or another isolated feedback link.</summary>
    OptocouplerOrIsolatedLink,

    /// <summary>One rectifier on each output winding.</summary>
    OutputRectifierOneWinding,

    /// <summary>An electrolytic capacitor rated 200 V or more.</summary>
    BulkCapHv,

    /// <summary>No inductor after the output rectifier.</summary>
    NoOutputInductor,

    /// <summary>An auxiliary winding that feeds the controller.</summary>
    AuxWindingSupply,

    /// <summary>A film or C0G capacitor of 5 to 100 nF, 630 V or more, in series with the primary.</summary>
    ResonantFilmCap,

    /// <summary>An inductor after the output rectifier that carries the whole output current.</summary>
    OutputFilterInductor,

    /// <summary>Two primary switches rated 400 V or more, in series across the bus.</summary>
    TwoHvPrimarySwitchesHalfBridge,

    /// <summary>A controller that senses the valley of the switch voltage.</summary>
    ValleySenseController,

    /// <summary>A MOSFET as rectifier on the secondary side.</summary>
    SyncRectifierSecondary,

    /// <summary>A gallium nitride primary switch.</summary>
    GanPrimarySwitch,

    /// <summary>A second, smaller high-voltage switch with a film or ceramic capacitor of 10 nF to 1 µF.</summary>
    ClampSwitchHv,

    /// <summary>A clamp capacitor.</summary>
    ClampCapacitor,

    /// <summary>A half-bridge or high-side driver.</summary>
    HalfBridgeDriver,

    /// <summary>Two output rectifiers.</summary>
    TwoOutputRectifiers,

    /// <summary>A reset winding or a clamp on the primary.</summary>
    ResetWindingOrClamp,

    /// <summary>Two primary switches rated 400 V or more, on either side of the primary.</summary>
    TwoHvPrimarySwitchesDiagonal,

    /// <summary>Two high-voltage clamp diodes.</summary>
    TwoClampDiodesHv,

    /// <summary>A resonant inductor, or a split bobbin.</summary>
    ResonantInductorOrLeakageSplitBobbin,

    /// <summary>Synchronous rectifiers on a centre-tapped secondary.</summary>
    SyncRectifierCentreTap,

    /// <summary>A power-factor stage ahead.</summary>
    PfcStagePresent,

    /// <summary>A boost choke before the bulk capacitor.</summary>
    PfcInductor,

    /// <summary>A high-voltage boost diode.</summary>
    HvBoostDiode,

    /// <summary>A mains bridge rectifier.</summary>
    BridgeRectifier,

    /// <summary>One high-voltage boost switch.</summary>
    OneHvBoostSwitch,

    /// <summary>An inrush thermistor or a relay across it.</summary>
    InrushNtcOrRelay,

    /// <summary>An electrolytic capacitor rated 400 to 450 V.</summary>
    BulkCapNear450V,

    /// <summary>Only low voltage present.</summary>
    LowVoltageOnly,

    /// <summary>A half bridge of two fast high-voltage devices.</summary>
    HfHvHalfBridge,

    /// <summary>A half bridge of two slow high-voltage devices at the mains terminals.</summary>
    LineFrequencyHvHalfBridge,

    /// <summary>Gallium nitride or silicon carbide switches.</summary>
    GanOrSicSwitches,

    /// <summary>No mains bridge rectifier.</summary>
    NoBridgeRectifier,

    /// <summary>One power inductor.</summary>
    SinglePowerInductor,

    /// <summary>Two switches, or a switch and a diode.</summary>
    TwoSwitchesOrSwitchPlusDiode,

    /// <summary>An output voltage below the input voltage.</summary>
    OutputLowerThanInput,

    /// <summary>Ceramic capacitors at the input.</summary>
    InputCeramics,

    /// <summary>A bootstrap capacitor.</summary>
    BootstrapCapacitor,

    /// <summary>Four similar MOSFETs with one inductor across their two midpoints.</summary>
    FourSwitchesOneInductor,

    /// <summary>An output voltage above the input voltage.</summary>
    OutputHigherThanInput,

    /// <summary>Ceramic capacitors at the output.</summary>
    OutputCeramics,

    /// <summary>Two bootstrap capacitors.</summary>
    TwoBootstrapCapacitors,

    /// <summary>A current shunt.</summary>
    CurrentSenseShunt,

    /// <summary>A USB Power Delivery controller nearby.</summary>
    UsbPdController,

    /// <summary>A controller of a synchronous rectifier.</summary>
    SrController,

    /// <summary>A low-voltage MOSFET beside the transformer.</summary>
    LowVoltageMosfetNearTransformer,

    /// <summary>A Schottky diode as output rectifier.</summary>
    SchottkyOutputRectifier,

    /// <summary>A transformer with three heavy leads of a low-voltage primary.</summary>
    CentreTapLowVoltagePrimary,

    /// <summary>Two equal groups of MOSFETs rated 40 to 150 V.</summary>
    TwoBanksLowVoltageSwitches,

    /// <summary>A high-voltage rectifier on the secondary.</summary>
    HvRectifierSecondary,

    /// <summary>A capacitor on a high-voltage dc bus.</summary>
    HvDcBusCapacitor,

    /// <summary>Battery terminals as the input.</summary>
    BatteryTerminalInput,

    /// <summary>Half-bridge drivers on the high-voltage side only.</summary>
    HalfBridgeDriverHvOnly,

    /// <summary>Four 600 V-class devices in a bridge.</summary>
    FourHvBridgeSwitches,

    /// <summary>A choke in the ac output.</summary>
    AcOutputFilterInductor,

    /// <summary>An ac-rated film capacitor across the output.</summary>
    AcOutputFilmCapacitor,

    /// <summary>A current sensor in the ac path.</summary>
    CurrentSensorAc,

    /// <summary>A relay in the output.</summary>
    OutputRelay,

    /// <summary>Groups of ceramic capacitors beside a chip with many pads.</summary>
    FlyingCapacitors,

    /// <summary>No power inductor in the stage.</summary>
    NoPowerInductor,

    /// <summary>A chip with four or more switches.</summary>
    FourOrMoreSwitchIc,

    /// <summary>An array of small ceramic capacitors.</summary>
    SmallCeramicArray,

    /// <summary>An output at a fixed ratio of the input.</summary>
    FixedRatioOutput,

    /// <summary>A single pass device.</summary>
    SinglePassDevice,

    /// <summary>A resistor that sets the charge current.</summary>
    ChargeResistorSet,

    /// <summary>A small chip beside the cell.</summary>
    SmallIcNearCell,

    /// <summary>A thermal pad under the pass device.</summary>
    ThermalPad,

    /// <summary>A full bridge on each side of the transformer.</summary>
    FullBridgeEachSide,

    /// <summary>An inductor in series with the transformer.</summary>
    SeriesInductor,
}
