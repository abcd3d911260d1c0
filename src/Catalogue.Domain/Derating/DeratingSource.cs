namespace Catalogue.Domain.Derating;

/// <summary>Where a guideline was published.</summary>
public enum DeratingSource
{
    /// <summary>NASA EEE-INST-002 (2003, with addendum).</summary>
    NasaEeeInst002,

    /// <summary>ECSS-Q-ST-30-11C Rev.2 (2021).</summary>
    EcssQSt3011,

    /// <summary>IPC-9592B (2012).</summary>
    Ipc9592B,

    /// <summary>RAC Electronic Derating for Optimum Performance (2000).</summary>
    Rac2000,

    /// <summary>MIL-DTL-917, Table XIX.</summary>
    MilDtl917,

    /// <summary>A convention of the trade.</summary>
    TradeConvention,

    /// <summary>The maker's rating itself.</summary>
    DataSheet,
}
