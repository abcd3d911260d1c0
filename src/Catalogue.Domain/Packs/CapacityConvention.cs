namespace Catalogue.Domain.Packs;

/// <summary>At which voltage a claimed ampere-hour figure counts. Claims are compared in watt-hours only.</summary>
public enum CapacityConvention
{
    /// <summary>All cells as if in parallel: times the voltage of one cell. Usual on power banks.</summary>
    CellVoltage,

    /// <summary>At a stated output voltage, often 5 V: lower by what the converter loses.</summary>
    OutputVoltage,

    /// <summary>At the voltage of the pack. Usual on power stations.</summary>
    PackVoltage,
}
