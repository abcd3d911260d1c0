namespace Catalogue.Data.LocalPostgres;

/// <summary>What came of a start: a server to use, or the reason there is none.</summary>
public abstract record LocalPostgresStart
{
    private LocalPostgresStart()
    {
    }

    /// <summary>The server answers and the database <c>catalogue</c> exists.</summary>
    /// <param name="ConnectionString">For the database <c>catalogue</c> as the role <c>catalogue</c>: owner, may create databases, no superuser.</param>
    /// <param name="Server">Dispose it last, when no connection is in use any more: it stops the server.</param>
    /// <param name="Notices">What a person who operates the site should know, whole sentences; mostly empty.</param>
    public sealed record Running(string ConnectionString, LocalPostgresServer Server, IReadOnlyList<string> Notices) : LocalPostgresStart;

    /// <summary>No server was started, and nothing that was there has been changed.</summary>
    /// <param name="Reason">What stands in the way, a whole sentence that names the folder, file or process.</param>
    /// <param name="WhatToDo">The way out, whole sentences.</param>
    public sealed record Refused(string Reason, string WhatToDo) : LocalPostgresStart;
}
