namespace Catalogue.Domain.Derating;

/// <summary>The names of the sources, as they are printed beside a guideline.</summary>
public static class DeratingSources
{
    /// <summary>The name with its edition.</summary>
    public static string Name(this DeratingSource source) => source switch
    {
        DeratingSource.Nasa => "NASA EEE-INST-002 (2003, with addendum)",
        DeratingSource.Ecss => "ECSS-Q-ST-30-11C Rev.2 (2021)",
        DeratingSource.Ipc => "IPC-9592B (2012)",
        DeratingSource.Rac => "RAC Electronic Derating for Optimum Performance (2000)",
        DeratingSource.Mil => "MIL-DTL-917, Table XIX",
        DeratingSource.TradeConvention => "convention of the trade",
        _ => "the part's data sheet",
    };
}
