namespace Catalogue.Domain.UsbPd;

/// <summary>Whether the adjustable supply that a power asks for is in the list.</summary>
public enum AvsState
{
    /// <summary>This power asks for none.</summary>
    NotRequired,

    /// <summary>It is there.</summary>
    Present,

    /// <summary>It is there with less range, current or power than asked for.</summary>
    Below,

    /// <summary>It is not offered. In the standard range only revision 3.2 asks for it; an older source is not wrong.</summary>
    Missing,
}
