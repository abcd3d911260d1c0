namespace Catalogue.Domain.Packs;

/// <summary>The second letter of a cell designation (IEC 61960-3, 5.1).</summary>
public enum PositiveElectrode
{
    /// <summary><c>C</c>.</summary>
    Cobalt,

    /// <summary><c>F</c>, of later use.</summary>
    Iron,

    /// <summary><c>M</c>.</summary>
    Manganese,

    /// <summary><c>N</c>.</summary>
    Nickel,

    /// <summary><c>T</c>.</summary>
    Titanium,

    /// <summary><c>V</c>.</summary>
    Vanadium,
}
