using Catalogue.Data.LocalPostgres;

namespace Catalogue.Web.Hosting;

/// <summary>The database of a run: a server that the settings name, or the program's own.</summary>
internal sealed class DatabaseServer : IAsyncDisposable
{
    private readonly LocalPostgresServer? _own;

    private DatabaseServer(string connectionString, LocalPostgresServer? own)
    {
        ConnectionString = connectionString;
        _own = own;
    }

    /// <summary>How to reach it.</summary>
    public string ConnectionString { get; }

    /// <summary>Finds or starts it; null when it cannot be had, and then the reason was written to <paramref name="errors"/>.</summary>
    /// <param name="connectionString">A server that was named, or null.</param>
    /// <param name="dataFolder">Folder of the program's own server.</param>
    /// <param name="joinRunning">True to use a server that another process of this program runs there.</param>
    /// <param name="output">Where notices go.</param>
    /// <param name="errors">Where the reason goes.</param>
    /// <param name="cancellationToken">Stops the start.</param>
    public static async Task<DatabaseServer?> OpenAsync(
        string? connectionString, string dataFolder, bool joinRunning, TextWriter output, TextWriter errors, CancellationToken cancellationToken)
    {
        if (!string.IsNullOrWhiteSpace(connectionString))
            return new DatabaseServer(connectionString, null);
        switch (await LocalPostgresServer.StartAsync(new LocalPostgresOptions { DataFolder = dataFolder, JoinRunning = joinRunning }, cancellationToken))
        {
            case LocalPostgresStart.Running running:
                foreach (var notice in running.Notices)
                    await output.WriteLineAsync(notice);
                return new DatabaseServer(running.ConnectionString, running.Server);
            case LocalPostgresStart.Refused refused:
                await errors.WriteLineAsync(refused.Reason);
                await errors.WriteLineAsync(refused.WhatToDo);
                return null;
            default:
                throw new InvalidOperationException("A server is running or was refused.");
        }
    }

    /// <summary>Stops the program's own server; one that was joined or named goes on.</summary>
    public ValueTask DisposeAsync() => _own?.DisposeAsync() ?? ValueTask.CompletedTask;
}
