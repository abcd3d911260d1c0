using Catalogue.Domain.Teardowns;

namespace Catalogue.Domain.Findings;

/// <summary>A conclusion in prose, and what it rests on.</summary>
public sealed class Finding : IEditableRecord
{
    /// <inheritdoc />
    public required RevisionId RevisionId { get; set; }

    /// <summary>Its id.</summary>
    public required FindingId Id { get; init; }

    /// <summary>Its place in the list, from 0.</summary>
    public int Position { get; set; }

    /// <summary>The heading: the conclusion in one line.</summary>
    public required string Heading { get; set; }

    /// <summary>The text in Markdown.</summary>
    public required string Markdown { get; set; }

    /// <summary>Components it rests on, by id.</summary>
    public Guid[] ComponentIds { get; set; } = [];

    /// <summary>Photos it rests on, by id.</summary>
    public Guid[] PhotoIds { get; set; } = [];

    /// <summary>Bench tests it rests on, by id.</summary>
    public Guid[] TestIds { get; set; } = [];

    /// <inheritdoc />
    public uint Version { get; init; }
}
