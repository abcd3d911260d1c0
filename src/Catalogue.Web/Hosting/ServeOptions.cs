namespace Catalogue.Web.Hosting;

/// <summary>How the site is to be run.</summary>
public sealed record ServeOptions
{
    /// <summary>Folder of the database, the photos and the keys; a full path.</summary>
    public required string DataFolder { get; init; }

    /// <summary>TCP port; 0 takes any that is free.</summary>
    public required int Port { get; init; }

    /// <summary>True to listen on all networks, false for this machine only.</summary>
    public bool ListensOnAllNetworks { get; init; }

    /// <summary>Whether the demo teardowns are planted.</summary>
    public DemoChoice Demo { get; init; }

    /// <summary>A server to use instead of the program's own, or null to take it from the settings, or else to start one.</summary>
    public string? ConnectionString { get; init; }
}
