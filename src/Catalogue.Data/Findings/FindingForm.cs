using System.ComponentModel;

namespace Catalogue.Data.Findings;

/// <summary>What is filled in for a finding.</summary>
public sealed class FindingForm
{
    /// <summary>The conclusion in one line.</summary>
    [Description("The conclusion in one line.")]
    public string? Heading { get; set; }

    /// <summary>The text in Markdown.</summary>
    [Description("The text in Markdown.")]
    public string? Markdown { get; set; }

    /// <summary>Components it rests on.</summary>
    [Description("Components it rests on.")]
    public IReadOnlyList<Guid>? ComponentIds { get; set; }

    /// <summary>Photos it rests on.</summary>
    [Description("Photos it rests on.")]
    public IReadOnlyList<Guid>? PhotoIds { get; set; }

    /// <summary>Bench tests it rests on.</summary>
    [Description("Bench tests it rests on.")]
    public IReadOnlyList<Guid>? TestIds { get; set; }
}
