namespace Catalogue.Domain.Imports;

/// <summary>Where an import run stands. The last three are ends.</summary>
public enum ImportState
{
    /// <summary>Not begun, or waiting to be begun again after a fault.</summary>
    Waiting,

    /// <summary>Under way.</summary>
    Running,

    /// <summary>All of it was brought in.</summary>
    Done,

    /// <summary>What was sent cannot be brought in; it is not tried again.</summary>
    Refused,

    /// <summary>It was given up after faults of the machine.</summary>
    Failed,
}
