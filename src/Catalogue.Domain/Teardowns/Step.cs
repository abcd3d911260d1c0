using Catalogue.Domain.Photos;

namespace Catalogue.Domain.Teardowns;

/// <summary>One step of taking the sample apart.</summary>
public sealed class Step : IEditableRecord
{
    /// <inheritdoc />
    public required RevisionId RevisionId { get; set; }

    /// <summary>Its id.</summary>
    public required StepId Id { get; init; }

    /// <summary>Its place in the order, from 0.</summary>
    public int Position { get; set; }

    /// <summary>A short heading.</summary>
    public required string Heading { get; set; }

    /// <summary>The text in Markdown, or null.</summary>
    public string? Markdown { get; set; }

    /// <summary>A photo of the step, or null.</summary>
    public PhotoId? PhotoId { get; set; }

    /// <inheritdoc />
    public uint Version { get; init; }
}
