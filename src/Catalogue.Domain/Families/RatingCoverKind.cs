namespace Catalogue.Domain.Families;

/// <summary>Whether a rating covers that of another part.</summary>
public enum RatingCoverKind
{
    /// <summary>It does.</summary>
    Covers,

    /// <summary>It cannot be told: one is not known, or they hold under other conditions. Never counted as covered.</summary>
    NotKnown,

    /// <summary>It does not.</summary>
    FallsShort,
}
