using System.Buffers;
using System.Text;
using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;

namespace Catalogue.Data.Archives;

/// <summary>
/// What a revision says, kind by kind, for comparing it with another copy of itself. Figures are left out: they follow from the rest. A component counts to the family
/// that it leads to here, so that merges and splits make no difference.
/// </summary>
/// <param name="forOthers">True to leave out what the form that is given away does not tell.</param>
internal sealed class RevisionDigests(bool forOthers)
{
    private const string Families = "family";

    private readonly SortedDictionary<string, ContentDigest> _digests = new(StringComparer.Ordinal);
    private readonly ArrayBufferWriter<byte> _buffer = new(4096);

    /// <summary>Takes a record in.</summary>
    public void Add(ArchiveKind kind, object record)
    {
        if (record is Figure or ArchiveLine.FamilyMove or ArchiveLine.Publication)
            return;
        _buffer.ResetWrittenCount();
        ArchiveJson.WriteForComparing(_buffer, kind, record, forOthers);
        Of(kind.Name).Add(_buffer.WrittenSpan);
    }

    /// <summary>Takes the family in that each component counts to, by the match key that it leads to here.</summary>
    public void Add(IEnumerable<KeyValuePair<ComponentId, string>> families)
    {
        foreach (var (component, family) in families)
            Of(Families).Add(Encoding.UTF8.GetBytes($"{component}/{family}"));
    }

    /// <summary>The kinds in which two copies differ.</summary>
    public IReadOnlyList<string> Differing(RevisionDigests other) =>
        [.. _digests.Keys.Union(other._digests.Keys).Where(kind => !(_digests.GetValueOrDefault(kind) ?? new ContentDigest()).IsSame(other._digests.GetValueOrDefault(kind))).Order(StringComparer.Ordinal)];

    private ContentDigest Of(string kind)
    {
        if (!_digests.TryGetValue(kind, out var digest))
            _digests[kind] = digest = new ContentDigest();
        return digest;
    }
}
