namespace Catalogue.Domain.Components;

/// <summary>The words of the circuit positions.</summary>
public static class CircuitPositions
{
    /// <summary>The words a person reads, such as <c>in line with the rail</c>.</summary>
    public static string Word(this CircuitPosition position) => position switch
    {
        CircuitPosition.InLine => "in line with the rail",
        CircuitPosition.AcrossRail => "across the rail",
        CircuitPosition.FlybackPrimary => "flyback primary",
        CircuitPosition.Bridge => "half or full bridge",
        CircuitPosition.Boost => "boost stage",
        CircuitPosition.Buck => "buck stage",
        CircuitPosition.PushPullPrimary => "push-pull primary",
        CircuitPosition.FlybackSecondary => "flyback secondary",
        CircuitPosition.CentreTappedSecondary => "centre-tapped secondary",
        CircuitPosition.BridgeSecondary => "full-bridge secondary",
        CircuitPosition.MainsBridge => "mains full bridge",
        _ => "mains half wave",
    };
}
