namespace Catalogue.Domain.UsbPd;

/// <summary>Whose list it is.</summary>
public enum PortRole
{
    /// <summary>What a port offers.</summary>
    Source,

    /// <summary>What a port wants. Never part of an offer.</summary>
    Sink,
}
