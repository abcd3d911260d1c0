namespace Catalogue.Domain.Packs;

/// <summary>Where the energy of one battery lies against the lines of the transport rules for lithium ion.</summary>
public enum TransportBand
{
    /// <summary>Up to 100 Wh.</summary>
    UpTo100Wh,

    /// <summary>Above 100 and up to 160 Wh.</summary>
    UpTo160Wh,

    /// <summary>Above 160 Wh.</summary>
    Above160Wh,
}
