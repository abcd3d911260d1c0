using Catalogue.Domain.Text;

namespace Catalogue.Domain.Topologies;

/// <summary>The codes and words of the cues.</summary>
public static class Cues
{
    private const string BulkCapacitorNear450V = "bulk_cap_near_450v";

    /// <summary>The words a person reads, such as <c>a half-bridge or high-side driver</c>.</summary>
    public static string Words(this Cue cue) => cue switch
    {
        Cue.HfTransformer => "a high-frequency transformer with two or more windings",
        Cue.OneHvPrimarySwitch => "exactly one primary switch rated 400 V or more",
        Cue.RcdClamp => "fast diode, resistor and capacitor across the primary",
        Cue.OptocouplerOrIsolatedLink => "an optocoupler or another isolated feedback link",
        Cue.OutputRectifierOneWinding => "one rectifier on each output winding",
        Cue.BulkCapHv => "an electrolytic capacitor rated 200 V or more",
        Cue.NoOutputInductor => "no inductor after the output rectifier",
        Cue.AuxWindingSupply => "an auxiliary winding that feeds the controller",
        Cue.ResonantFilmCap => "a film or C0G capacitor of 5 to 100 nF, 630 V or more, in series with the primary",
        Cue.OutputFilterInductor => "an inductor after the output rectifier that carries the whole output current",
        Cue.TwoHvPrimarySwitchesHalfBridge => "two primary switches rated 400 V or more, in series across the bus",
        Cue.ValleySenseController => "a controller that senses the valley of the switch voltage",
        Cue.SyncRectifierSecondary => "a MOSFET as rectifier on the secondary side",
        Cue.GanPrimarySwitch => "a gallium nitride primary switch",
        Cue.ClampSwitchHv => "a second, smaller high-voltage switch with a film or ceramic capacitor of 10 nF to 1 µF",
        Cue.ClampCapacitor => "a clamp capacitor",
        Cue.HalfBridgeDriver => "a half-bridge or high-side driver",
        Cue.TwoOutputRectifiers => "two output rectifiers",
        Cue.ResetWindingOrClamp => "a reset winding or a clamp on the primary",
        Cue.TwoHvPrimarySwitchesDiagonal => "two primary switches rated 400 V or more, on either side of the primary",
        Cue.TwoClampDiodesHv => "two high-voltage clamp diodes",
        Cue.ResonantInductorOrLeakageSplitBobbin => "a resonant inductor, or a split bobbin",
        Cue.SyncRectifierCentreTap => "synchronous rectifiers on a centre-tapped secondary",
        Cue.PfcStagePresent => "a power-factor stage ahead",
        Cue.PfcInductor => "a boost choke before the bulk capacitor",
        Cue.HvBoostDiode => "a high-voltage boost diode",
        Cue.BridgeRectifier => "a mains bridge rectifier",
        Cue.OneHvBoostSwitch => "one high-voltage boost switch",
        Cue.InrushNtcOrRelay => "an inrush thermistor or a relay across it",
        Cue.BulkCapNear450V => "an electrolytic capacitor rated 400 to 450 V",
        Cue.LowVoltageOnly => "only low voltage present",
        Cue.HfHvHalfBridge => "a half bridge of two fast high-voltage devices",
        Cue.LineFrequencyHvHalfBridge => "a half bridge of two slow high-voltage devices at the mains terminals",
        Cue.GanOrSicSwitches => "gallium nitride or silicon carbide switches",
        Cue.NoBridgeRectifier => "no mains bridge rectifier",
        Cue.SinglePowerInductor => "one power inductor",
        Cue.TwoSwitchesOrSwitchPlusDiode => "two switches, or a switch and a diode",
        Cue.OutputLowerThanInput => "an output voltage below the input voltage",
        Cue.InputCeramics => "ceramic capacitors at the input",
        Cue.BootstrapCapacitor => "a bootstrap capacitor",
        Cue.FourSwitchesOneInductor => "four similar MOSFETs with one inductor across their two midpoints",
        Cue.OutputHigherThanInput => "an output voltage above the input voltage",
        Cue.OutputCeramics => "ceramic capacitors at the output",
        Cue.TwoBootstrapCapacitors => "two bootstrap capacitors",
        Cue.CurrentSenseShunt => "a current shunt",
        Cue.UsbPdController => "a USB Power Delivery controller nearby",
        Cue.SrController => "a controller of a synchronous rectifier",
        Cue.LowVoltageMosfetNearTransformer => "a low-voltage MOSFET beside the transformer",
        Cue.SchottkyOutputRectifier => "a Schottky diode as output rectifier",
        Cue.CentreTapLowVoltagePrimary => "a transformer with three heavy leads of a low-voltage primary",
        Cue.TwoBanksLowVoltageSwitches => "two equal groups of MOSFETs rated 40 to 150 V",
        Cue.HvRectifierSecondary => "a high-voltage rectifier on the secondary",
        Cue.HvDcBusCapacitor => "a capacitor on a high-voltage dc bus",
        Cue.BatteryTerminalInput => "battery terminals as the input",
        Cue.HalfBridgeDriverHvOnly => "half-bridge drivers on the high-voltage side only",
        Cue.FourHvBridgeSwitches => "four 600 V-class devices in a bridge",
        Cue.AcOutputFilterInductor => "a choke in the ac output",
        Cue.AcOutputFilmCapacitor => "an ac-rated film capacitor across the output",
        Cue.CurrentSensorAc => "a current sensor in the ac path",
        Cue.OutputRelay => "a relay in the output",
        Cue.FlyingCapacitors => "groups of ceramic capacitors beside a chip with many pads",
        Cue.NoPowerInductor => "no power inductor in the stage",
        Cue.FourOrMoreSwitchIc => "a chip with four or more switches",
        Cue.SmallCeramicArray => "an array of small ceramic capacitors",
        Cue.FixedRatioOutput => "an output at a fixed ratio of the input",
        Cue.SinglePassDevice => "a single pass device",
        Cue.ChargeResistorSet => "a resistor that sets the charge current",
        Cue.SmallIcNearCell => "a small chip beside the cell",
        Cue.ThermalPad => "a thermal pad under the pass device",
        Cue.FullBridgeEachSide => "a full bridge on each side of the transformer",
        Cue.SeriesInductor => "an inductor in series with the transformer",
        _ => throw new ArgumentOutOfRangeException(nameof(cue), cue, "No such cue."),
    };

    /// <summary>The code of a cue, such as <c>rcd_clamp</c>.</summary>
    public static string Code(this Cue cue) => cue is Cue.BulkCapNear450V ? BulkCapacitorNear450V : SnakeCase.Code(cue);

    /// <summary>The cue a code stands for, or null. Case counts.</summary>
    public static Cue? TryParse(string? code) => code == BulkCapacitorNear450V ? Cue.BulkCapNear450V
        : SnakeCase.TryParse<Cue>(code) is { } cue && cue is not Cue.BulkCapNear450V ? cue
        : null;
}
