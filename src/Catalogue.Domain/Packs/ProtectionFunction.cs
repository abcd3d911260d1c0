namespace Catalogue.Domain.Packs;

/// <summary>What a pack is protected against, or by what. Thresholds belong to the cell: what was measured is recorded, none is assumed.</summary>
public enum ProtectionFunction
{
    /// <summary>A cell's voltage too high.</summary>
    CellOvervoltage,

    /// <summary>A cell's voltage too low.</summary>
    CellUndervoltage,

    /// <summary>Charged with too much current.</summary>
    ChargeOvercurrent,

    /// <summary>Discharged with too much current.</summary>
    DischargeOvercurrent,

    /// <summary>A short circuit at the terminals.</summary>
    ShortCircuit,

    /// <summary>Charged while too hot.</summary>
    ChargeOverTemperature,

    /// <summary>Charged while too cold.</summary>
    ChargeUnderTemperature,

    /// <summary>Discharged while too hot.</summary>
    DischargeOverTemperature,

    /// <summary>Cells drifted apart.</summary>
    CellImbalance,

    /// <summary>Overvoltage watched by a second, independent chip.</summary>
    SecondaryOvervoltage,

    /// <summary>A three-terminal fuse blown by a heater.</summary>
    ChemicalFuse,

    /// <summary>A thermal cut-off.</summary>
    ThermalCutoff,

    /// <summary>A resettable fuse (PTC).</summary>
    Ptc,

    /// <summary>A contact that must be closed.</summary>
    Interlock,

    /// <summary>Communication with the pack lost.</summary>
    CommunicationLoss,
}
