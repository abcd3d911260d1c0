using Catalogue.Domain.Teardowns;

namespace Catalogue.Domain.Publishing;

/// <summary>The act and record of publishing a revision. Never changed afterwards.</summary>
public sealed class Publication
{
    /// <summary>Its id.</summary>
    public required PublicationId Id { get; init; }

    /// <summary>The teardown.</summary>
    public required TeardownId TeardownId { get; init; }

    /// <summary>The revision published.</summary>
    public required RevisionId RevisionId { get; init; }

    /// <summary>What changed, for readers; of a first revision it may be empty.</summary>
    public required string Note { get; init; }

    /// <summary>When.</summary>
    public required DateTimeOffset PublishedAt { get; init; }

    /// <summary>By whom, as the audit names them.</summary>
    public required string PublishedBy { get; init; }
}
