namespace Catalogue.Domain.BenchLogs;

/// <summary>The classes of external power supplies that the schemes tell apart.</summary>
public enum EfficiencyClass
{
    /// <summary>One output, ac to dc, not of low voltage.</summary>
    BasicAcdc,

    /// <summary>One output, ac to dc, below 6 V and from 550 mA on.</summary>
    LowVoltageAcdc,

    /// <summary>Several outputs at the same time.</summary>
    MultipleOutput,

    /// <summary>One output, ac to ac; only its no-load limit is known here.</summary>
    Acac,
}
