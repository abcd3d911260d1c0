namespace Catalogue.Data.LocalPostgres;

/// <summary>Where the catalogue's own PostgreSQL lives and how a start behaves.</summary>
public sealed record LocalPostgresOptions
{
    /// <summary>The data folder, absolute or relative to the current folder; made (mode 0700) when it is not there.</summary>
    public required string DataFolder { get; init; }

    /// <summary>
    /// A folder with <c>postgres</c>, <c>initdb</c> and <c>pg_ctl</c>. Null: the environment variable
    /// <c>CATALOGUE_PG_BIN</c>, else what the machine has (<see cref="PostgresBinaries.FindAllAsync"/>).
    /// </summary>
    public string? BinFolder { get; init; }

    /// <summary>
    /// True for the admin command: when another program holds the data folder, use the server it runs and leave that
    /// server alone at the end. False (the site): a held data folder is a refusal.
    /// </summary>
    public bool JoinRunning { get; init; }

    /// <summary>
    /// Server settings given on the command line, over those of <c>postgresql.conf</c>; names and values of letters, digits,
    /// dots, dashes and underscores only. Tests switch durability off with it.
    /// </summary>
    public IReadOnlyDictionary<string, string> Settings { get; init; } = new Dictionary<string, string>();

    /// <summary>The clock that waits and retries run on.</summary>
    public TimeProvider TimeProvider { get; init; } = TimeProvider.System;
}
