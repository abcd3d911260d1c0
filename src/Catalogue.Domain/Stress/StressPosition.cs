namespace Catalogue.Domain.Stress;

/// <summary>Where a switch or rectifier sits, as far as it decides the voltage it must block (<see cref="VoltageStress"/>).</summary>
public enum StressPosition
{
    /// <summary>The primary switch of a flyback converter.</summary>
    FlybackPrimary,

    /// <summary>A primary switch of a half or full bridge, a resonant half bridge or a two-switch forward converter.</summary>
    BridgePrimary,

    /// <summary>A switch of a full bridge that makes the ac output.</summary>
    HBridgeOutput,

    /// <summary>The switch of a boost or power-factor stage.</summary>
    PfcBoost,

    /// <summary>The rectifier of a boost or power-factor stage.</summary>
    BoostOutput,

    /// <summary>The high-side switch of a buck converter.</summary>
    BuckHighSide,

    /// <summary>The freewheeling diode or low-side switch of a buck converter.</summary>
    BuckFreewheel,

    /// <summary>A primary switch of a push-pull converter.</summary>
    PushPullPrimary,

    /// <summary>The secondary rectifier of a flyback converter, or the synchronous switch in its place.</summary>
    FlybackSecondary,

    /// <summary>A rectifier of a centre-tapped secondary.</summary>
    CentreTappedSecondary,

    /// <summary>A rectifier of a full-bridge secondary.</summary>
    FullBridgeSecondary,

    /// <summary>A diode of a full-bridge mains rectifier into a capacitor.</summary>
    FullBridgeCapacitorInput,

    /// <summary>The diode of a half-wave mains rectifier into a capacitor.</summary>
    HalfWaveCapacitorInput,

    /// <summary>A switch that disconnects a battery.</summary>
    BatteryDisconnect,
}
