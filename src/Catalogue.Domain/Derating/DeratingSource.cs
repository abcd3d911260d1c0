namespace Catalogue.Domain.Derating;

/// <summary>Where a guideline was published.</summary>
public enum DeratingSource
{
    /// <summary>NASA EEE-INST-002 (2003, with addendum).</summary>
    Nasa,

    /// <summary>ECSS-Q-ST-30-11C Rev.2 (2021).</summary>
    Ecss,

    /// <summary>IPC-9592B (2012).</summary>
    Ipc,

    /// <summary>RAC Electronic Derating for Optimum Performance (2000).</summary>
    Rac,

    /// <summary>MIL-DTL-917, Table XIX.</summary>
    Mil,

    /// <summary>A convention of the trade.</summary>
    TradeConvention,

    /// <summary>The maker's rating itself.</summary>
    DataSheet,
}
