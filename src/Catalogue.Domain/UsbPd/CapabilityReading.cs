namespace Catalogue.Domain.UsbPd;

/// <summary>What came of reading a pasted text.</summary>
public abstract record CapabilityReading
{
    private CapabilityReading()
    {
    }

    /// <summary>Lists were found.</summary>
    /// <param name="Lists">The sources' lists in the order of the text, each once; where there are none, the sinks' lists. One at least.</param>
    /// <param name="KeptApart">Lists of sinks beside them; no part of any offer.</param>
    /// <param name="AsWritten">
    /// Where the bytes of the words were taken in the opposite order to make sense of them: the first list as it was written. A person has to
    /// say which is meant. Else null.
    /// </param>
    /// <param name="Warnings">What a person should look at, as sentences.</param>
    /// <param name="Notes">How the text was taken, as sentences.</param>
    public sealed record Read(
        IReadOnlyList<CapabilityList> Lists, IReadOnlyList<CapabilityList> KeptApart, CapabilityList? AsWritten, IReadOnlyList<string> Warnings, IReadOnlyList<string> Notes) : CapabilityReading;

    /// <summary>There is no list in it.</summary>
    /// <param name="Reason">Says what was wrong and what would be right.</param>
    public sealed record Refused(string Reason) : CapabilityReading;
}
