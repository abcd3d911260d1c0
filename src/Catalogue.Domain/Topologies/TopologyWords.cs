namespace Catalogue.Domain.Topologies;

/// <summary>The words of the topologies.</summary>
public static class TopologyWords
{
    /// <summary>The name a person reads, such as <c>active-clamp flyback</c>.</summary>
    public static string Word(this Topology topology) => topology switch
    {
        Topology.Flyback => "flyback",
        Topology.QuasiResonantFlyback => "quasi-resonant flyback",
        Topology.ActiveClampFlyback => "active-clamp flyback",
        Topology.ForwardSingleSwitch => "single-switch forward",
        Topology.ForwardTwoSwitch => "two-switch forward",
        Topology.HalfBridgeLlc => "LLC half bridge",
        Topology.PfcBoost => "boost power-factor stage",
        Topology.PfcBridgelessTotemPole => "bridgeless totem-pole power-factor stage",
        Topology.Buck => "buck",
        Topology.Boost => "boost",
        Topology.BuckBoostFourSwitch => "four-switch buck-boost",
        Topology.SynchronousRectification => "synchronous rectification",
        Topology.PushPullIsolatedDcDc => "push-pull isolated dc-dc",
        Topology.HBridgeInverter => "H-bridge inverter",
        Topology.ChargePump => "charge pump",
        Topology.LinearCharger => "linear charger",
        Topology.BidirectionalDualActiveBridge => "dual active bridge",
        _ => throw new ArgumentOutOfRangeException(nameof(topology), topology, "No such topology."),
    };

    /// <summary>How it works, in a clause.</summary>
    public static string Description(this Topology topology) => topology switch
    {
        Topology.Flyback => "one switch stores energy in the transformer, which releases it to the output",
        Topology.QuasiResonantFlyback => "a flyback that switches at a valley of its switch voltage",
        Topology.ActiveClampFlyback => "a flyback that recycles its leakage energy through a second switch and a capacitor",
        Topology.ForwardSingleSwitch => "energy crosses while the one switch is on",
        Topology.ForwardTwoSwitch => "a forward converter with two switches in series and two clamp diodes",
        Topology.HalfBridgeLlc => "a resonant half bridge",
        Topology.PfcBoost => "a boost converter that shapes the mains current",
        Topology.PfcBridgelessTotemPole => "no input bridge; one fast half bridge and one at mains frequency",
        Topology.Buck => "steps down, not isolated",
        Topology.Boost => "steps up, not isolated",
        Topology.BuckBoostFourSwitch => "one inductor between two half bridges",
        Topology.SynchronousRectification => "MOSFETs in place of diodes on a secondary",
        Topology.PushPullIsolatedDcDc => "two banks of low-voltage switches drive a centre-tapped primary",
        Topology.HBridgeInverter => "four switches make ac from a bus",
        Topology.ChargePump => "switched capacitors with a fixed ratio",
        Topology.LinearCharger => "a pass device sets the charge current",
        Topology.BidirectionalDualActiveBridge => "a full bridge on both sides of a transformer, for either direction",
        _ => throw new ArgumentOutOfRangeException(nameof(topology), topology, "No such topology."),
    };
}
