namespace Catalogue.Domain.BenchLogs;

/// <summary>The schemes that limit efficiency and no-load power of external power supplies.</summary>
public enum EfficiencyScheme
{
    /// <summary>US DOE Level VI, 10 CFR 430.32(w).</summary>
    LevelVi,

    /// <summary>EU Code of Conduct on external power supplies, version 5, tier 2; voluntary.</summary>
    CocV5Tier2,
}
