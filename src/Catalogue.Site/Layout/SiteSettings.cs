using Catalogue.Data.Publishing;

namespace Catalogue.Site.Layout;

/// <summary>The lab's settings, read once for each page.</summary>
/// <param name="settings">Reads them.</param>
public sealed class SiteSettings(SettingsQuery settings)
{
    private Task<LabSettings>? _read;

    /// <summary>The settings.</summary>
    public Task<LabSettings> ReadAsync() => _read ??= settings.RunAsync();
}
