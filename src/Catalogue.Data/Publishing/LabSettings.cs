using Catalogue.Domain.Derating;
using Catalogue.Domain.Figures;

namespace Catalogue.Data.Publishing;

/// <summary>What a lab sets for itself; one row.</summary>
public sealed class LabSettings
{
    /// <summary>Always 1.</summary>
    public int Id { get; init; } = 1;

    /// <summary>The lab's name, in the head of every page.</summary>
    public required string LabName { get; set; }

    /// <summary>The address readers know the site by, such as <c>https://bench.example</c>, or null; canonical links need it.</summary>
    public string? PublicBaseAddress { get; set; }

    /// <summary>The licence of the content, or null when none is given.</summary>
    public string? ContentLicence { get; set; }

    /// <summary>How to reach the lab, or null.</summary>
    public string? Contact { get; set; }

    /// <summary>True when a second person must approve before anything is published.</summary>
    public bool RequiresApproval { get; set; }

    /// <summary>The derating practice that guidelines default to.</summary>
    public DeratingPreset DeratingPreset { get; set; }

    /// <summary>Lines that the lab has changed, by their code in the table of lines.</summary>
    public IReadOnlyDictionary<string, double> ChangedLines { get; set; } = new Dictionary<string, double>();

    /// <summary>The lines that figures are held against.</summary>
    public LineTable LineTable => new(DeratingPreset, ChangedLines);

    /// <summary>Changes with every save.</summary>
    public uint Version { get; init; }
}
