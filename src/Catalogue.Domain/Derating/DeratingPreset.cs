namespace Catalogue.Domain.Derating;

/// <summary>The named derating practice that guidelines default to. House rule: the choice; the guidelines are their publishers'.</summary>
public enum DeratingPreset
{
    /// <summary>Industrial power conversion: IPC-9592B and the fuse conventions; where they have nothing usable, space practice. The default.</summary>
    Industrial,

    /// <summary>Space practice, NASA EEE-INST-002 and ECSS-Q-ST-30-11C; for fuses they do not know, the fuse conventions. Deliberately harsh.</summary>
    Space,

    /// <summary>The data sheet alone: no derating.</summary>
    DataSheet,
}
