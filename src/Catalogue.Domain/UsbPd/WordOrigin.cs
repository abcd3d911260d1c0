namespace Catalogue.Domain.UsbPd;

/// <summary>What the numbers of a capability were taken from.</summary>
public enum WordOrigin
{
    /// <summary>A word as written, decoded.</summary>
    Word,

    /// <summary>The bytes of a message, decoded.</summary>
    Bytes,

    /// <summary>Text that somebody else decoded or printed: a claim, not a decode.</summary>
    Text,
}
