namespace Catalogue.Domain.Capacitors;

/// <summary>How serious stored energy is taken to be, mildest first. A house rule: display bands, deliberately careful, no limits of any standard.</summary>
public enum EnergyBand
{
    /// <summary>Nothing to warn of by itself.</summary>
    Note,

    /// <summary>Low voltage, but enough energy to burn.</summary>
    Burn,

    /// <summary>Above 60 V and above the class 1 limit for a charged capacitor.</summary>
    Caution,

    /// <summary>Enough to make a hand jerk away.</summary>
    Warning,

    /// <summary>Enough to injure seriously.</summary>
    Danger,
}
