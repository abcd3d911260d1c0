namespace Catalogue.Domain.Packs;

/// <summary>The words a person reads for the vocabularies of a pack.</summary>
public static class PackWords
{
    /// <summary>A protection, such as <c>cell overvoltage</c>.</summary>
    public static string Word(this ProtectionFunction protection) => protection switch
    {
        ProtectionFunction.CellOvervoltage => "cell overvoltage",
        ProtectionFunction.CellUndervoltage => "cell undervoltage",
        ProtectionFunction.ChargeOvercurrent => "charge overcurrent",
        ProtectionFunction.DischargeOvercurrent => "discharge overcurrent",
        ProtectionFunction.ShortCircuit => "short circuit",
        ProtectionFunction.ChargeOverTemperature => "over-temperature while charging",
        ProtectionFunction.ChargeUnderTemperature => "under-temperature while charging",
        ProtectionFunction.DischargeOverTemperature => "over-temperature while discharging",
        ProtectionFunction.CellImbalance => "cell imbalance",
        ProtectionFunction.SecondaryOvervoltage => "second, independent overvoltage protection",
        ProtectionFunction.ChemicalFuse => "heater-blown fuse",
        ProtectionFunction.ThermalCutoff => "thermal cut-off",
        ProtectionFunction.Ptc => "resettable fuse (PTC)",
        ProtectionFunction.Interlock => "interlock",
        ProtectionFunction.CommunicationLoss => "loss of communication",
        _ => throw new ArgumentOutOfRangeException(nameof(protection), protection, null),
    };

    /// <summary>A way of balancing.</summary>
    public static string Word(this Balancing balancing) => balancing switch
    {
        Balancing.None => "none",
        Balancing.PassiveBleed => "passive, a resistor per cell",
        Balancing.ActiveInductor => "active, by inductors",
        Balancing.ActiveCapacitor => "active, by capacitors",
        Balancing.Unknown => "not known",
        _ => throw new ArgumentOutOfRangeException(nameof(balancing), balancing, null),
    };

    /// <summary>At which voltage a capacity counts.</summary>
    public static string Word(this CapacityConvention convention) => convention switch
    {
        CapacityConvention.CellVoltage => "at the voltage of one cell",
        CapacityConvention.OutputVoltage => "at the output voltage",
        CapacityConvention.PackVoltage => "at the voltage of the pack",
        _ => throw new ArgumentOutOfRangeException(nameof(convention), convention, null),
    };

    /// <summary>How well two claims of energy agree.</summary>
    public static string Word(this EnergyLabel label) => label switch
    {
        EnergyLabel.Consistent => "consistent",
        EnergyLabel.Loose => "loose",
        EnergyLabel.Inconsistent => "inconsistent",
        _ => throw new ArgumentOutOfRangeException(nameof(label), label, null),
    };

    /// <summary>What an implied efficiency says.</summary>
    public static string Word(this EfficiencyLabel label) => label switch
    {
        EfficiencyLabel.Plausible => "plausible",
        EfficiencyLabel.CheckVoltageConvention => "check the voltage convention",
        EfficiencyLabel.Unlikely => "unlikely",
        EfficiencyLabel.Impossible => "impossible",
        _ => throw new ArgumentOutOfRangeException(nameof(label), label, null),
    };
}
