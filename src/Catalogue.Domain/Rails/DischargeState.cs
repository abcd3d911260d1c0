namespace Catalogue.Domain.Rails;

/// <summary>What a discharge reading says at a given time. Nothing it says takes a caution away.</summary>
public enum DischargeState
{
    /// <summary>Fresh, and its highest case below the limit.</summary>
    BelowLimit,

    /// <summary>Fresh, and its highest case at the limit or above: charge was found.</summary>
    Charged,

    /// <summary>Too old to speak of now, or of unknown age.</summary>
    Stale,
}
