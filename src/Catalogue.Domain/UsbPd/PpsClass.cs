namespace Catalogue.Domain.UsbPd;

/// <summary>The class of a programmable supply, by its highest voltage (0.1 V either way).</summary>
/// <remarks>Source: USB Power Delivery 3.2, tables 10.10 and 10.11; the 5 V class is of older revisions.</remarks>
public enum PpsClass
{
    /// <summary>None of them.</summary>
    Other,

    /// <summary>To 5.9 V.</summary>
    FiveVolts,

    /// <summary>To 11 V.</summary>
    NineVolts,

    /// <summary>To 16 V.</summary>
    FifteenVolts,

    /// <summary>To 21 V.</summary>
    TwentyVolts,
}
