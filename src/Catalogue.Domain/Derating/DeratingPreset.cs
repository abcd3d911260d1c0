namespace Catalogue.Domain.Derating;

/// <summary>The named derating practice that guidelines default to.</summary>
public enum DeratingPreset
{
    /// <summary>Industrial power conversion; filled from space practice where it says nothing.</summary>
    Industrial,

    /// <summary>Space practice, deliberately harsh.</summary>
    Space,

    /// <summary>The data sheet alone: no derating.</summary>
    DataSheet,
}
