using Catalogue.Domain.Components;
using Catalogue.Domain.Makers;
using Catalogue.Domain.Photos;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;

namespace Catalogue.Data.Archives;

/// <summary>
/// Reads an archive from end to end before anything of it is taken: every line is a record of its kind and in its place, whatever it refers to is there, and nothing
/// stands twice. What is kept of it is small: keys, digests and heads.
/// </summary>
/// <param name="file">The archive.</param>
/// <param name="model">Says which fields are unique and how long texts may be.</param>
internal sealed class ArchiveReading(ArchiveFile file, IModel model)
{
    private static readonly IReadOnlyList<ArchiveKind> Order = [.. ArchiveKind.Content, ArchiveKind.FamilyMove, ArchiveKind.Publication];

    private readonly HashSet<string> _makers = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string?> _families = new(StringComparer.Ordinal);
    private readonly Dictionary<string, ArchiveLine.PhotoFile> _photos = new(StringComparer.Ordinal);
    private readonly List<ArchivedTeardown> _teardowns = [];
    private readonly Dictionary<Type, Uniqueness> _uniqueness = [];

    /// <summary>The match keys of its families.</summary>
    public IReadOnlyCollection<string> Families => _families.Keys;

    /// <summary>Its picture files by SHA-256.</summary>
    public IReadOnlyDictionary<string, ArchiveLine.PhotoFile> Photos => _photos;

    /// <summary>Its teardowns, by their number.</summary>
    public IReadOnlyList<ArchivedTeardown> Teardowns => _teardowns;

    // Where a unique index of a kind of record stands; its first column is the revision.
    private sealed record Uniqueness(IReadOnlyList<IReadOnlyList<IProperty>> Indexes, IReadOnlyList<IProperty> Limited);

    /// <summary>Reads makers, families and picture files.</summary>
    public async Task ReadCatalogueAsync(CancellationToken cancellationToken)
    {
        await foreach (var line in file.LinesAsync(ArchiveForm.MakersEntry, cancellationToken))
        {
            var maker = line.Record as ArchiveLine.Maker ?? throw Misplaced(line);
            if (!_makers.Add(MakerName.Key(maker.Name)))
                throw line.Refuse($"The maker “{maker.Name}” stands twice.");
        }

        await foreach (var line in file.LinesAsync(ArchiveForm.FamiliesEntry, cancellationToken))
        {
            var family = line.Record as ArchiveLine.Family ?? throw Misplaced(line);
            if (!_families.TryAdd(family.MatchKey, family.MergedInto))
                throw line.Refuse($"The family “{family.MatchKey}” stands twice.");
            if (family.Makers.Concat(family.TopMarks.Select(code => code.Maker).OfType<string>()).FirstOrDefault(name => !_makers.Contains(MakerName.Key(name))) is { } unknown)
                throw line.Refuse($"The maker “{unknown}” is not in {ArchiveForm.MakersEntry}.");
        }

        // Families may be told of before the ones that they refer to, so these are looked at when all are known.
        await foreach (var line in file.LinesAsync(ArchiveForm.FamiliesEntry, cancellationToken))
        {
            var family = (ArchiveLine.Family)line.Record;
            if (family.MergedInto is { } target && (target == family.MatchKey || !_families.TryGetValue(target, out var further) || further is not null))
                throw line.Refuse($"It was merged into “{target}”, which is not in {ArchiveForm.FamiliesEntry} or was merged itself.");
            if (family.Relations.FirstOrDefault(relation => !_families.ContainsKey(relation.Other)) is { } relation)
                throw line.Refuse($"It stands in a relation to “{relation.Other}”, which is not in {ArchiveForm.FamiliesEntry}.");
        }

        await foreach (var line in file.LinesAsync(ArchiveForm.PhotosEntry, cancellationToken))
        {
            var photo = line.Record as ArchiveLine.PhotoFile ?? throw Misplaced(line);
            if (!_photos.TryAdd(photo.Sha256, photo))
                throw line.Refuse($"The picture file {photo.Sha256} stands twice.");
            if (photo.Entry is { } entry && file.Sha256Of(entry) != photo.Sha256)
                throw line.Refuse($"{entry} is not in the archive, or has another SHA-256.");
        }
    }

    /// <summary>Reads all teardowns.</summary>
    /// <param name="leadsTo">The match key that a family leads to here.</param>
    /// <param name="progress">Hears how many are read and how many there are.</param>
    /// <param name="cancellationToken">Cancels it.</param>
    public async Task ReadTeardownsAsync(Func<string, string> leadsTo, Func<int, int, CancellationToken, Task> progress, CancellationToken cancellationToken)
    {
        var ids = new HashSet<Guid>();
        var entries = file.TeardownEntries.ToList();
        foreach (var entry in entries)
        {
            var teardown = await ReadAsync(entry, leadsTo, cancellationToken);
            foreach (var id in teardown.Revisions.Select(revision => revision.Id.Value).Concat(teardown.Revisions.Select(revision => revision.Publication?.Id.Value).OfType<Guid>()).Prepend(teardown.Head.Id.Value))
                if (!ids.Add(id))
                    throw new ArchiveRefusedException(entry, $"The id {id} stands twice in the archive.");
            _teardowns.Add(teardown);
            await progress(_teardowns.Count, entries.Count, cancellationToken);
        }

        _teardowns.Sort((one, other) => one.Head.Number != other.Head.Number ? one.Head.Number.CompareTo(other.Head.Number) : string.CompareOrdinal(one.Entry, other.Entry));
    }

    private async Task<ArchivedTeardown> ReadAsync(string entry, Func<string, string> leadsTo, CancellationToken cancellationToken)
    {
        ArchivedTeardown? teardown = null;
        ArchivedTeardown.ArchivedRevision? revision = null;
        RevisionLines? lines = null;
        await foreach (var line in file.LinesAsync(entry, cancellationToken))
        {
            if (teardown is null)
            {
                var head = line.Record as ArchiveLine.Teardown ?? throw line.Refuse("The first line of a teardown is of the kind “teardown”.");
                if (ArchiveForm.TeardownEntry(head.Slug) != entry)
                    throw line.Refuse($"“slug” is the name of the entry; {entry} does not go with “{head.Slug}”.");
                teardown = new ArchivedTeardown(entry, head);
                continue;
            }

            if (line.Record is Revision opened)
            {
                Close(entry, revision, lines);
                Check(line, opened, revision);
                CheckTexts(line);
                revision = new ArchivedTeardown.ArchivedRevision(opened.Id, opened.Number, opened.State, new RevisionDigests(file.Manifest.IsForOthers));
                revision.Digests.Add(line.Kind, opened);
                teardown.Revisions.Add(revision);
                lines = new RevisionLines();
                continue;
            }

            if (!line.Kind.IsOfRevision)
                throw Misplaced(line);
            if (revision is null || line.Revision != revision.Number)
                throw line.Refuse($"It is of revision {line.Revision}, whose line does not stand before it.");
            lines!.Place(line);
            Check(line, revision, lines);
            revision.Digests.Add(line.Kind, line.Record);
            if (line.Family is { } key)
                lines.CountTo(line, leadsTo(key));
        }

        Close(entry, revision, lines);
        if (teardown is null)
            throw new ArchiveRefusedException(entry, "It is empty.");
        if (teardown.Revisions.Count == 0)
            throw new ArchiveRefusedException(entry, "It has no revision.");
        if (teardown.Revisions.Count(row => row.State is RevisionState.Published) > 1)
            throw new ArchiveRefusedException(entry, "Two revisions are published; the earlier one is superseded.");
        return teardown;
    }

    private static void Check(ArchiveFile.Line line, Revision opened, ArchivedTeardown.ArchivedRevision? before)
    {
        if (before is not null && opened.Number <= before.Number)
            throw line.Refuse("Revisions stand in the order of their numbers.");
        if (before?.State is RevisionState.Draft or RevisionState.InReview)
            throw line.Refuse("A draft is the last revision.");
        if (opened.State is RevisionState.Draft or RevisionState.InReview == opened.PublishedAt is not null)
            throw line.Refuse("“published_at” is there exactly when the revision is no draft.");
    }

    private void Check(ArchiveFile.Line line, ArchivedTeardown.ArchivedRevision revision, RevisionLines lines)
    {
        switch (line.Record)
        {
            case BoardComponent:
                if (++revision.Components > BoardComponent.MaxInTeardown)
                    throw line.Refuse($"A teardown holds at most {BoardComponent.MaxInTeardown} components.");
                break;
            case Photo photo:
                if (!_photos.TryGetValue(photo.Sha256, out var picture))
                    throw line.Refuse($"The picture file {photo.Sha256} is not in {ArchiveForm.PhotosEntry}.");
                if ((photo.WidthPixels, photo.HeightPixels) != (picture.WidthPixels, picture.HeightPixels))
                    throw line.Refuse($"The picture has {picture.WidthPixels} × {picture.HeightPixels} pixels in {ArchiveForm.PhotosEntry}.");
                revision.Photos.Add(photo.Sha256);
                break;
            case ArchiveLine.Publication publication:
                if (revision.Publication is not null || revision.State is RevisionState.Draft or RevisionState.InReview)
                    throw line.Refuse("A revision that was published has one publication, a draft has none.");
                revision.Publication = publication;
                break;
            default:
                break;
        }

        if (line.Family is { } key && !_families.ContainsKey(key))
            throw line.Refuse($"The family “{key}” is not in {ArchiveForm.FamiliesEntry}.");
        lines.Refer(line);
        CheckTexts(line);
        foreach (var index in Of(line.Kind.Type).Indexes)
        {
            var values = index.Select(property => property.GetGetter().GetClrValue(line.Record)).ToList();
            if (!values.Contains(null) && !lines.AddUnique(line.Kind.Name, string.Join('\u001f', index.Select(property => property.Name).Concat(values.Select(value => Convert.ToString(value, System.Globalization.CultureInfo.InvariantCulture))))))
                throw line.Refuse($"Another {line.Kind.Name} of this revision has the same {string.Join(" and ", index.Select(property => property.GetColumnName()))}.");
        }
    }

    private void CheckTexts(ArchiveFile.Line line)
    {
        foreach (var property in Of(line.Kind.Type).Limited)
            if (property.GetGetter().GetClrValue(line.Record) is string text && text.Length > property.GetMaxLength())
                throw line.Refuse($"“{property.GetColumnName()}” has {text.Length} characters; at most {property.GetMaxLength()} are taken.");
    }

    private Uniqueness Of(Type type)
    {
        if (_uniqueness.TryGetValue(type, out var known))
            return known;
        var entity = model.FindEntityType(type);
        var made = entity is null
            ? new Uniqueness([], [])
            : new Uniqueness(
                [.. entity.GetIndexes().Where(index => index.IsUnique && index.GetFilter() is null).Select(index => index.Properties.Where(property => property.Name != nameof(IRevisionContent.RevisionId)).ToList())],
                [.. entity.GetProperties().Where(property => property.ClrType == typeof(string) && property.GetMaxLength() is not null)]);
        return _uniqueness[type] = typeof(IRevisionContent).IsAssignableFrom(type) ? made : made with { Indexes = [] };
    }

    private static void Close(string entry, ArchivedTeardown.ArchivedRevision? revision, RevisionLines? lines)
    {
        if (revision is null)
            return;
        lines!.CheckReferences();
        revision.Digests.Add(lines.Families);
        if (revision.Publication is null && revision.State is not (RevisionState.Draft or RevisionState.InReview))
            throw new ArchiveRefusedException(entry, $"Revision {revision.Number} was published, and its publication is missing.");
    }

    private static ArchiveRefusedException Misplaced(ArchiveFile.Line line) => line.Refuse($"A line of the kind “{line.Kind.Name}” has no place here.");

    // What one revision holds, and what is referred to in it.
    private sealed class RevisionLines
    {
        private readonly HashSet<(Type, Guid)> _ids = [];
        private readonly HashSet<(string, string)> _unique = [];
        private readonly Dictionary<ComponentId, string> _families = [];
        private readonly List<(ArchiveFile.Line Line, Type Kind, Guid Id)> _open = [];
        private int _place;

        public IReadOnlyDictionary<ComponentId, string> Families => _families;

        // Moves stand after the components, so the last word is theirs.
        public void CountTo(ArchiveFile.Line line, string family) =>
            _families[line.Record is ArchiveLine.FamilyMove move ? move.ComponentId : ((BoardComponent)line.Record).Id] = family;

        public void Place(ArchiveFile.Line line)
        {
            var place = Order.Select((kind, index) => (kind, index)).First(pair => pair.kind == line.Kind).index;
            if (place < _place)
                throw line.Refuse($"Lines of the kind “{line.Kind.Name}” stand before those of the kind “{Order[_place].Name}”.");
            _place = place;
        }

        public bool AddUnique(string kind, string key) => _unique.Add((kind, key));

        public void Refer(ArchiveFile.Line line)
        {
            foreach (var reference in ArchiveReferences.Of(line.Record))
            {
                if (!reference.IsOwn)
                    _open.Add((line, reference.Kind, reference.Id));
                else if (!_ids.Add((line.Kind.Type, reference.Id)))
                    throw line.Refuse($"The id {reference.Id} stands twice in this revision.");
            }
        }

        public void CheckReferences()
        {
            foreach (var (line, kind, id) in _open)
                if (!_ids.Contains((kind, id)))
                    throw line.Refuse($"It refers to the {ArchiveKind.All.First(known => known.Type == kind).Name} {id}, which is not in this revision.");
        }
    }
}
