namespace Catalogue.Domain.UsbPd;

/// <summary>What came of writing a capability as a word.</summary>
public abstract record WordEncoding
{
    private WordEncoding()
    {
    }

    /// <summary>It fits.</summary>
    /// <param name="Word">The word.</param>
    public sealed record Encoded(uint Word) : WordEncoding;

    /// <summary>A value does not fit its field; nothing is rounded or cut.</summary>
    /// <param name="Reason">Which value, and what would fit.</param>
    public sealed record Refused(string Reason) : WordEncoding;
}
