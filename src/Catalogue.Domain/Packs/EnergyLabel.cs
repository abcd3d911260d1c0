namespace Catalogue.Domain.Packs;

/// <summary>How well two claims of energy agree. A house rule: display bands, no limits of any standard.</summary>
public enum EnergyLabel
{
    /// <summary>0.97 to 1.03.</summary>
    Consistent,

    /// <summary>0.90 to 0.97, or 1.03 to 1.10.</summary>
    Loose,

    /// <summary>Anything further off.</summary>
    Inconsistent,
}
