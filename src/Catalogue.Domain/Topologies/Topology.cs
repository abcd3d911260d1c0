namespace Catalogue.Domain.Topologies;

/// <summary>How a converter stage works. A stage may have several; a reviewer tags, the program suggests.</summary>
public enum Topology
{
    /// <summary>One switch stores energy in the transformer, which releases it to the output.</summary>
    Flyback,

    /// <summary>A flyback that switches at a valley of its switch voltage.</summary>
    QuasiResonantFlyback,

    /// <summary>A flyback that recycles its leakage energy through a second switch and a capacitor.</summary>
    ActiveClampFlyback,

    /// <summary>Energy crosses while the one switch is on.</summary>
    ForwardSingleSwitch,

    /// <summary>A forward converter with two switches in series and two clamp diodes.</summary>
    ForwardTwoSwitch,

    /// <summary>A resonant half bridge.</summary>
    HalfBridgeLlc,

    /// <summary>A boost converter that shapes the mains current.</summary>
    PfcBoost,

    /// <summary>No input bridge; one fast half bridge and one at mains frequency.</summary>
    PfcBridgelessTotemPole,

    /// <summary>Steps down, not isolated.</summary>
    Buck,

    /// <summary>Steps up, not isolated.</summary>
    Boost,

    /// <summary>One inductor between two half bridges.</summary>
    BuckBoostFourSwitch,

    /// <summary>MOSFETs in place of diodes on a secondary.</summary>
    SynchronousRectification,

    /// <summary>Two banks of low-voltage switches drive a centre-tapped primary.</summary>
    PushPullIsolatedDcDc,

    /// <summary>Four switches make ac from a bus.</summary>
    HBridgeInverter,

    /// <summary>Switched capacitors with a fixed ratio.</summary>
    ChargePump,

    /// <summary>A pass device sets the charge current.</summary>
    LinearCharger,

    /// <summary>A full bridge on both sides of a transformer, for either direction.</summary>
    BidirectionalDualActiveBridge,
}
