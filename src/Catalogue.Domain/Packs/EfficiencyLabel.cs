namespace Catalogue.Domain.Packs;

/// <summary>What the efficiency that two claims imply says about them. A house rule, but for the physics of 1.</summary>
public enum EfficiencyLabel
{
    /// <summary>0.60 to 0.95.</summary>
    Plausible,

    /// <summary>Below 0.60: the two figures may count at other voltages than taken.</summary>
    CheckVoltageConvention,

    /// <summary>Above 0.95.</summary>
    Unlikely,

    /// <summary>Above 1: more would come out than is stored.</summary>
    Impossible,
}
