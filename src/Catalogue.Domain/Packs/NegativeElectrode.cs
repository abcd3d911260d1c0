namespace Catalogue.Domain.Packs;

/// <summary>The first letter of a cell designation (IEC 61960-3, 5.1).</summary>
public enum NegativeElectrode
{
    /// <summary><c>I</c>.</summary>
    LithiumIon,

    /// <summary><c>L</c>: lithium metal or alloy.</summary>
    LithiumMetal,
}
