namespace Catalogue.Domain.Packages;

/// <summary>What leads heat away beside the leads.</summary>
public enum PackageTab
{
    /// <summary>Nothing of its own.</summary>
    None,

    /// <summary>A tab joined to one of the leads; it is no pin of its own.</summary>
    Joined,

    /// <summary>A tab that takes the place of the lead that is cut off, and counts as a pin: TO-252 has two leads and three pins.</summary>
    Pin,

    /// <summary>An exposed pad under the body; it is not counted.</summary>
    Pad,
}
