namespace Catalogue.Domain.UsbPd;

/// <summary>What the four bytes after a message are.</summary>
internal enum WireCrc
{
    /// <summary>There are none, or other than four that are no check sum.</summary>
    None,

    /// <summary>The check sum of the message.</summary>
    Right,

    /// <summary>Four bytes that are not its check sum.</summary>
    Wrong,
}
