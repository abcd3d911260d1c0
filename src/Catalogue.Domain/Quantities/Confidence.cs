namespace Catalogue.Domain.Quantities;

/// <summary>How well a constant of a table is founded. It decides what the constant may do by itself.</summary>
public enum Confidence
{
    /// <summary>Read in the source, or in two copies that agree, or plain physics: may be a default.</summary>
    High,

    /// <summary>Well known, but not read in the governing text, or dependent on its edition: a default only beside its source, and editable.</summary>
    Medium,

    /// <summary>Uncertain or contested: never a default.</summary>
    Low,
}
