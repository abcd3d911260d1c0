using Catalogue.Domain.Derating;

namespace Catalogue.Data.Publishing;

/// <summary>What is filled in for the lab's settings.</summary>
public sealed class SettingsForm
{
    /// <summary>The lab's name.</summary>
    public string? LabName { get; set; }

    /// <summary>The address readers know the site by.</summary>
    public string? PublicBaseAddress { get; set; }

    /// <summary>The licence of the content.</summary>
    public string? ContentLicence { get; set; }

    /// <summary>How to reach the lab.</summary>
    public string? Contact { get; set; }

    /// <summary>True when a second person must approve before anything is published.</summary>
    public bool RequiresApproval { get; set; }

    /// <summary>The derating practice that guidelines default to.</summary>
    public DeratingPreset DeratingPreset { get; set; }

    /// <summary>Lines of the lab's own, by code; a line that is not there keeps its default.</summary>
    public IReadOnlyDictionary<string, double> ChangedLines { get; set; } = new Dictionary<string, double>();
}
