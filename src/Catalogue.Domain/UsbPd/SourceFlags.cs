namespace Catalogue.Domain.UsbPd;

/// <summary>What the first object of a list says of the whole port. Each value is its own bit of the word.</summary>
/// <remarks>Source: USB Power Delivery 3.2, table 6.9.</remarks>
[Flags]
public enum SourceFlags
{
    /// <summary>Nothing is said.</summary>
    None = 0,

    /// <summary>Can change to extended power.</summary>
    EprCapable = 1 << 23,

    /// <summary>Takes extended messages in one piece.</summary>
    UnchunkedExt = 1 << 24,

    /// <summary>Can swap the data role.</summary>
    DualRoleData = 1 << 25,

    /// <summary>Data lines can talk USB.</summary>
    UsbComm = 1 << 26,

    /// <summary>Fed from a supply that does not run down, such as mains.</summary>
    UnconstrainedPower = 1 << 27,

    /// <summary>The sink has to follow the rules of USB suspend.</summary>
    UsbSuspend = 1 << 28,

    /// <summary>Can swap the power role.</summary>
    DualRolePower = 1 << 29,
}
