namespace Catalogue.Data.Publishing;

/// <summary>One row whose version grows whenever anything that readers see changes. Caches compare it.</summary>
public sealed class SiteState
{
    /// <summary>Always 1.</summary>
    public int Id { get; init; } = 1;

    /// <summary>Grows with each publication, withdrawal, merge and change of settings; the database sees to it.</summary>
    public long SiteVersion { get; init; }

    /// <summary>The stamp of the rules and lines that all figures were last computed by, or null when they never were.</summary>
    public string? FiguresStamp { get; init; }
}
