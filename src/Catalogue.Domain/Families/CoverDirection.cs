namespace Catalogue.Domain.Families;

/// <summary>How a rating of a part must stand to that of the part whose place it takes.</summary>
public enum CoverDirection
{
    /// <summary>It says nothing about taking a place: it is a judgement of one design, or what a part saw there.</summary>
    NotCompared,

    /// <summary>At least as much: a voltage, a current, a power, a capacity, a life.</summary>
    AtLeast,

    /// <summary>At most as much: an on-resistance, a forward voltage, a thermal resistance.</summary>
    AtMost,

    /// <summary>The same value, its spread within that of the other: a capacitance, the current of a fuse.</summary>
    Within,
}
