namespace Catalogue.Domain.Questions;

/// <summary>Which case of an interval decides a rank.</summary>
public enum RankCase
{
    /// <summary>The lowest case, which for a headroom is the worst.</summary>
    Low,

    /// <summary>The nominal case.</summary>
    Nominal,
}
