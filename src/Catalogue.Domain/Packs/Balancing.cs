namespace Catalogue.Domain.Packs;

/// <summary>How the cells in series are kept alike.</summary>
public enum Balancing
{
    /// <summary>Seen to have none.</summary>
    None,

    /// <summary>A resistor across each cell (<see cref="BalanceBleed"/>).</summary>
    PassiveBleed,

    /// <summary>Charge moved through inductors.</summary>
    ActiveInductor,

    /// <summary>Charge moved through capacitors.</summary>
    ActiveCapacitor,

    /// <summary>Not known.</summary>
    Unknown,
}
