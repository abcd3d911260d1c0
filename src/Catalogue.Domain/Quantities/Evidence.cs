namespace Catalogue.Domain.Quantities;

/// <summary>How we know something, strongest first.</summary>
public enum Evidence
{
    /// <summary>Measured on this bench.</summary>
    Measured,

    /// <summary>Read on the part, the label or the board.</summary>
    ReadOnPart,

    /// <summary>Taken from the maker's datasheet.</summary>
    Datasheet,

    /// <summary>Decoded from a marking by a published code.</summary>
    Decoded,

    /// <summary>Inferred from the circuit or from like parts.</summary>
    Inferred,

    /// <summary>A guess, or a value whose source was not stated.</summary>
    Guess,
}
