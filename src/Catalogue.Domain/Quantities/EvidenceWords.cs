namespace Catalogue.Domain.Quantities;

/// <summary>The word a person reads for each kind of evidence.</summary>
public static class EvidenceWords
{
    /// <summary>Lower-case words, such as <c>read on part</c>.</summary>
    public static string Word(this Evidence evidence) => evidence switch
    {
        Evidence.Measured => "measured",
        Evidence.ReadOnPart => "read on part",
        Evidence.Datasheet => "datasheet",
        Evidence.Decoded => "decoded",
        Evidence.Inferred => "inferred",
        _ => "guess",
    };
}
