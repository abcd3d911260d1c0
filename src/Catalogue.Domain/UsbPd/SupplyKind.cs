namespace Catalogue.Domain.UsbPd;

/// <summary>What one word of a capability list is.</summary>
/// <remarks>Source: USB Power Delivery 3.2, tables 6.7 and 6.8; the last two are not of the standard's own.</remarks>
public enum SupplyKind
{
    /// <summary>One voltage.</summary>
    Fixed,

    /// <summary>A battery: a window of voltages at a power.</summary>
    Battery,

    /// <summary>A supply whose voltage wanders within a window.</summary>
    Variable,

    /// <summary>Programmable supply of the standard range.</summary>
    SprPps,

    /// <summary>Adjustable voltage of the standard range, 9 V to 15 V or to 20 V.</summary>
    SprAvs,

    /// <summary>Adjustable voltage of the extended range.</summary>
    EprAvs,

    /// <summary>An augmented word of the reserved type; its bits mean nothing yet.</summary>
    ReservedApdo,

    /// <summary>A zero word that fills a position.</summary>
    Padding,

    /// <summary>A word that was damaged before it was read.</summary>
    Unreadable,
}
