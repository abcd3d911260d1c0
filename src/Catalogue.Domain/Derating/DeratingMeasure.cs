namespace Catalogue.Domain.Derating;

/// <summary>What the number of a guideline is.</summary>
public enum DeratingMeasure
{
    /// <summary>A factor on the rating.</summary>
    Factor,

    /// <summary>A highest temperature, in °C.</summary>
    HighestDegC,

    /// <summary>A distance below the rated temperature, in °C.</summary>
    DegCBelowRating,

    /// <summary>A loss per °C.</summary>
    PerDegC,
}
