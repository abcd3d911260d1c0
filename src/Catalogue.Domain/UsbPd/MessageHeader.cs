namespace Catalogue.Domain.UsbPd;

/// <summary>The 16-bit header of a message.</summary>
/// <remarks>Source: USB Power Delivery 3.2, clause 6.2.1.1. On the wire the low byte goes first.</remarks>
/// <param name="Value">The header as a number.</param>
public readonly record struct MessageHeader(ushort Value)
{
    private const int SourceCapabilitiesType = 0x01, SinkCapabilitiesType = 0x04, ExtendedSourceCapabilitiesType = 0x11, ExtendedSinkCapabilitiesType = 0x12;

    /// <summary>True for an extended message; an extended header follows.</summary>
    public bool IsExtended => Value >> 15 == 1;

    /// <summary>How many data objects follow, 0 to 7; 0 is a control message, or an extended message in one piece.</summary>
    public int ObjectCount => Value >> 12 & 0b111;

    /// <summary>The running number of the message, 0 to 7.</summary>
    public int MessageId => Value >> 9 & 0b111;

    /// <summary>True where the sender is the source of power.</summary>
    public bool IsFromSource => (Value >> 8 & 1) == 1;

    /// <summary>The specification's revision: 1.0, 2.0 or 3.x; null for the reserved code.</summary>
    public string? Revision => (Value >> 6 & 0b11) switch { 0 => "1.0", 1 => "2.0", 2 => "3.x", _ => null };

    /// <summary>The type code, 0 to 31; what it means depends on <see cref="IsExtended"/> and <see cref="ObjectCount"/>.</summary>
    public int Type => Value & 0b1_1111;

    /// <summary>Whose capability list the message carries; null for any other message.</summary>
    public PortRole? Capabilities => (IsExtended, Type) switch
    {
        (false, SourceCapabilitiesType) when ObjectCount > 0 => PortRole.Source,
        (false, SinkCapabilitiesType) when ObjectCount > 0 => PortRole.Sink,
        (true, ExtendedSourceCapabilitiesType) => PortRole.Source,
        (true, ExtendedSinkCapabilitiesType) => PortRole.Sink,
        _ => null,
    };
}
