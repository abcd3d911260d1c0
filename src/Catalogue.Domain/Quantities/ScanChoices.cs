namespace Catalogue.Domain.Quantities;

/// <summary>What a text leaves open.</summary>
[Flags]
internal enum ScanDoubts : byte
{
    /// <summary>Nothing.</summary>
    None = 0,

    /// <summary>A mark before exactly three digits: decimal, or a group of thousands.</summary>
    Mark = 1,

    /// <summary>M where nobody uses millions, or m in the wrong case: milli or mega.</summary>
    Prefix = 2,

    /// <summary>A multiple without its unit: farad or henry, ohm too.</summary>
    BareUnit = 4,

    /// <summary>E as the old ohm, or as an exponent.</summary>
    OldOhm = 8,

    /// <summary>A code with several readings.</summary>
    Code = 16,
}

/// <summary>How to take what a text leaves open; 0 is the first way of each.</summary>
/// <param name="Mark">0 decimal mark, 1 thousands.</param>
/// <param name="Prefix">0 milli, 1 mega.</param>
/// <param name="BareUnit">Index into what the prefix allows.</param>
/// <param name="OldOhm">0 decimal mark of ohms, 1 exponent.</param>
/// <param name="Code">Index into the readings of the code.</param>
/// <param name="TakesCodes">Whether bare digits may be a code.</param>
/// <param name="IsProse">Whether the text is free words, in which nothing but a number with its unit counts.</param>
internal readonly record struct ScanChoices(int Mark = 0, int Prefix = 0, int BareUnit = 0, int OldOhm = 0, int Code = 0, bool TakesCodes = false, bool IsProse = false);
