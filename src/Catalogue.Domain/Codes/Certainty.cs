namespace Catalogue.Domain.Codes;

/// <summary>How sure a reading of a code is, weakest first.</summary>
public enum Certainty
{
    /// <summary>Possible; shown so that nobody overlooks it.</summary>
    Low,

    /// <summary>Trade usage, or a code whose digits are unusual for it.</summary>
    Medium,

    /// <summary>A published code, and nothing speaks against it.</summary>
    High,
}
