using Catalogue.Domain.Teardowns;

namespace Catalogue.Data.Archives;

/// <summary>What was noted of a teardown of an archive while its lines were checked.</summary>
/// <param name="Entry">Its entry.</param>
/// <param name="Head">Its first line.</param>
internal sealed record ArchivedTeardown(string Entry, ArchiveLine.Teardown Head)
{
    /// <summary>Its revisions by number.</summary>
    public List<ArchivedRevision> Revisions { get; } = [];

    /// <summary>The revision that arrives where only a draft is to arrive: the newest that was not withdrawn; null when all were.</summary>
    public ArchivedRevision? Newest => Revisions.FindLast(revision => revision.State is not RevisionState.Withdrawn);

    /// <summary>A revision.</summary>
    /// <param name="Id">Its id.</param>
    /// <param name="Number">Its number.</param>
    /// <param name="State">Where it stood.</param>
    /// <param name="Digests">What it says.</param>
    public sealed record ArchivedRevision(RevisionId Id, int Number, RevisionState State, RevisionDigests Digests)
    {
        /// <summary>The files of its photos.</summary>
        public HashSet<string> Photos { get; } = new(StringComparer.Ordinal);

        /// <summary>How many components it has.</summary>
        public int Components { get; set; }

        /// <summary>Its publication, or null for a draft.</summary>
        public ArchiveLine.Publication? Publication { get; set; }
    }
}
