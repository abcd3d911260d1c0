namespace Catalogue.Domain.Components;

/// <summary>Where in a circuit a part stands; it decides which voltage and which current the part sees of its rail.</summary>
public enum CircuitPosition
{
    /// <summary>In line with the rail: its whole current flows through the place.</summary>
    InLine,

    /// <summary>Between the rail and its return.</summary>
    AcrossRail,

    /// <summary>Switch at the primary of a flyback converter.</summary>
    FlybackPrimary,

    /// <summary>Switch of a half bridge, a full bridge, a resonant half bridge or a two-switch forward converter.</summary>
    Bridge,

    /// <summary>Switch or rectifier of a boost or power-factor stage; the rail is its output.</summary>
    Boost,

    /// <summary>High-side switch or freewheeling rectifier of a buck stage; the rail is its input.</summary>
    Buck,

    /// <summary>Switch at the primary of a push-pull converter.</summary>
    PushPullPrimary,

    /// <summary>Rectifier or synchronous switch at the secondary of a flyback converter; the rail is the primary bus.</summary>
    FlybackSecondary,

    /// <summary>Rectifier at a centre-tapped secondary; the rail is the output.</summary>
    CentreTappedSecondary,

    /// <summary>Rectifier of a full bridge at a secondary; the rail is the output.</summary>
    BridgeSecondary,

    /// <summary>Rectifier of a full bridge at the mains.</summary>
    MainsBridge,

    /// <summary>Single rectifier between the mains and a capacitor.</summary>
    MainsHalfWave,
}
