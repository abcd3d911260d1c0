using System.ComponentModel;

namespace Catalogue.Data.Teardowns;

/// <summary>What is filled in for a step.</summary>
public sealed class StepForm
{
    /// <summary>A short heading.</summary>
    [Description("A short heading.")]
    public string? Heading { get; set; }

    /// <summary>The text in Markdown.</summary>
    [Description("The text in Markdown.")]
    public string? Markdown { get; set; }

    /// <summary>The id of a photo of the step.</summary>
    [Description("The id of a photo of the step.")]
    public Guid? PhotoId { get; set; }
}
