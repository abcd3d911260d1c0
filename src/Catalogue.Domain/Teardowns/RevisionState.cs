namespace Catalogue.Domain.Teardowns;

/// <summary>Where a revision stands. Only the first two may be edited.</summary>
public enum RevisionState
{
    /// <summary>Being written.</summary>
    Draft,

    /// <summary>Waiting for a second person; still a draft to everybody outside.</summary>
    InReview,

    /// <summary>The one that readers see; at most one a teardown.</summary>
    Published,

    /// <summary>Published earlier and replaced since; kept at its own address.</summary>
    Superseded,

    /// <summary>Taken back; its number stays.</summary>
    Withdrawn,
}
