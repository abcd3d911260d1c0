using System.Text.Json;
using System.Text.Json.Nodes;
using Catalogue.Domain.Families;
using Catalogue.Domain.Makers;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Archives;

/// <summary>
/// Brings makers and part families in. They are matched by name and match key alone, other names included; what is here is never changed, only what is missing is
/// added. Foreseeing it and doing it are one code: the preview runs in a transaction that is rolled back.
/// </summary>
/// <param name="context">In a transaction of its own; the locks of makers and families are held.</param>
/// <param name="file">The archive, whose lines were checked.</param>
internal sealed class FamilyArrival(CatalogueContext context, ArchiveFile file)
{
    private readonly Dictionary<string, MakerId> _makers = new(StringComparer.Ordinal);
    private readonly Dictionary<string, FamilyId> _new = new(StringComparer.Ordinal);
    private readonly Tally _makerTally = new();
    private readonly Tally _familyTally = new();

    /// <summary>What became of the makers.</summary>
    public ArchiveReport.Matched Makers => _makerTally.ToReport();

    /// <summary>What became of the families.</summary>
    public ArchiveReport.Matched Families => _familyTally.ToReport();

    /// <summary>Brings them in.</summary>
    public async Task RunAsync(CancellationToken cancellationToken)
    {
        await foreach (var batch in Batches<ArchiveLine.Maker>(ArchiveForm.MakersEntry, cancellationToken))
            await AddMakersAsync(batch, cancellationToken);
        await foreach (var batch in Batches<ArchiveLine.Family>(ArchiveForm.FamiliesEntry, cancellationToken))
            await AddFamiliesAsync(batch, cancellationToken);
        if (_new.Count > 0)
            await foreach (var batch in Batches<ArchiveLine.Family>(ArchiveForm.FamiliesEntry, cancellationToken))
                await ConnectAsync(batch, cancellationToken);
    }

    private async Task AddMakersAsync(List<ArchiveLine.Maker> batch, CancellationToken cancellationToken)
    {
        var keys = batch.SelectMany(maker => maker.Aliases.Prepend(maker.Name)).Select(MakerName.Key).Distinct().ToList();
        var own = await context.Makers.AsNoTracking().Where(row => keys.Contains(row.NameKey)).ToDictionaryAsync(row => row.NameKey, StringComparer.Ordinal, cancellationToken);
        var others = await context.MakerAliases.AsNoTracking().Where(row => keys.Contains(row.NameKey)).ToDictionaryAsync(row => row.NameKey, row => row.MakerId, StringComparer.Ordinal, cancellationToken);
        var slugs = batch.Select(maker => maker.Slug).ToList();
        var taken = (await context.Makers.Where(row => slugs.Contains(row.Slug)).Select(row => row.Slug).ToListAsync(cancellationToken)).ToHashSet(StringComparer.Ordinal);
        foreach (var line in batch)
        {
            var key = MakerName.Key(line.Name);
            if (own.TryGetValue(key, out var known))
            {
                _makers[key] = known.Id;
                _makerTally.Know(line.Name, known.Name == line.Name ? [] : ["name"]);
            }
            else if (others.TryGetValue(key, out var id))
            {
                _makers[key] = id;
                _makerTally.Know(line.Name, ["it is another name of a maker here"]);
            }
            else
            {
                var slug = await FreeSlugAsync(taken, line.Slug, name => context.Makers.AnyAsync(row => row.Slug == name, cancellationToken), _makerTally, line.Name);
                var maker = new Maker { Id = MakerId.New(), Name = line.Name, NameKey = key, Slug = slug };
                context.Makers.Add(maker);
                own[key] = maker;
                _makers[key] = maker.Id;
                _makerTally.Add(line.Name);
                foreach (var alias in line.Aliases)
                {
                    if (own.ContainsKey(MakerName.Key(alias)) || !others.TryAdd(MakerName.Key(alias), maker.Id))
                        _makerTally.Conflict($"{line.Name}: the other name “{alias}” belongs to another maker here and is left out.");
                    else
                        context.MakerAliases.Add(new MakerAlias { MakerId = maker.Id, Name = alias, NameKey = MakerName.Key(alias) });
                }
            }
        }

        await SaveAsync(cancellationToken);
    }

    private async Task AddFamiliesAsync(List<ArchiveLine.Family> batch, CancellationToken cancellationToken)
    {
        var keys = batch.SelectMany(family => family.Aliases.Select(alias => alias.MatchKey).Prepend(family.MatchKey)).Distinct().ToList();
        var own = await context.Families.AsNoTracking().Where(row => keys.Contains(row.MatchKey)).ToDictionaryAsync(row => row.MatchKey, row => row.Id, StringComparer.Ordinal, cancellationToken);
        var others = await context.FamilyAliases.AsNoTracking().Where(row => keys.Contains(row.MatchKey)).ToDictionaryAsync(row => row.MatchKey, row => row.FamilyId, StringComparer.Ordinal, cancellationToken);
        var known = batch.Where(family => own.ContainsKey(family.MatchKey)).Select(family => own[family.MatchKey]).ToList();
        var here = (await ArchiveFamilies.ReadAsync(context, known, null, forOthers: false, cancellationToken)).ToDictionary(family => family.MatchKey, StringComparer.Ordinal);
        var slugs = batch.Select(family => family.Slug).ToList();
        var taken = (await context.Families.Where(row => slugs.Contains(row.Slug)).Select(row => row.Slug).ToListAsync(cancellationToken)).ToHashSet(StringComparer.Ordinal);
        foreach (var line in batch)
        {
            if (here.TryGetValue(line.MatchKey, out var family))
                _familyTally.Know(line.MatchKey, Differing(line, family));
            else if (others.ContainsKey(line.MatchKey))
                _familyTally.Know(line.MatchKey, ["it is another number of a family here"]);
            else
                await AddAsync(line);
        }

        await SaveAsync(cancellationToken);

        async Task AddAsync(ArchiveLine.Family line)
        {
            var family = new PartFamily
            {
                Id = FamilyId.New(),
                Name = line.Name,
                MatchKey = line.MatchKey,
                SearchKey = PartNumber.From(line.MatchKey)!.SearchKey,
                Slug = await FreeSlugAsync(taken, line.Slug, name => context.Families.AnyAsync(row => row.Slug == name, cancellationToken), _familyTally, line.MatchKey),
                FunctionClass = line.FunctionClass,
                DatasheetUrl = line.DatasheetUrl,
                Packages = line.Packages,
                Note = line.Note,
            };
            context.Families.Add(family);
            own[line.MatchKey] = family.Id;
            _new[line.MatchKey] = family.Id;
            _familyTally.Add(line.MatchKey);
            foreach (var alias in line.Aliases)
            {
                if (own.ContainsKey(alias.MatchKey) || !others.TryAdd(alias.MatchKey, family.Id))
                    _familyTally.Conflict($"{line.MatchKey}: the other number “{alias.Name}” belongs to another family here and is left out.");
                else
                    context.FamilyAliases.Add(new FamilyAlias { FamilyId = family.Id, Name = alias.Name, MatchKey = alias.MatchKey, Kind = alias.Kind });
            }

            foreach (var maker in line.Makers.Select(name => _makers[MakerName.Key(name)]).Distinct())
                context.FamilyMakers.Add(new FamilyMaker { FamilyId = family.Id, MakerId = maker });
            foreach (var code in line.TopMarks)
                context.TopMarks.Add(new TopMark { Id = TopMarkId.New(), FamilyId = family.Id, Code = code.Text, MakerId = code.Maker is { } maker ? _makers[MakerName.Key(maker)] : null, Package = code.Package, Source = code.Source });
            foreach (var rating in line.Ratings)
            {
                context.FamilyRatings.Add(new FamilyRating
                {
                    Id = FamilyRatingId.New(),
                    FamilyId = family.Id,
                    Kind = rating.Kind,
                    Low = rating.Low,
                    Nominal = rating.Nominal,
                    High = rating.High,
                    Condition = rating.Condition,
                    Evidence = rating.Evidence,
                    Source = rating.Source,
                });
            }
        }
    }

    // Merges and relations, once every family is there. Only what is new is connected: what stands here was decided here.
    private async Task ConnectAsync(List<ArchiveLine.Family> batch, CancellationToken cancellationToken)
    {
        var named = batch.Where(family => family.MergedInto is not null || family.Relations.Count > 0)
            .SelectMany(family => family.Relations.Select(relation => relation.Other).Append(family.MatchKey).Append(family.MergedInto)).OfType<string>().Distinct().ToList();
        var families = await context.Families.Where(row => named.Contains(row.MatchKey)).ToDictionaryAsync(row => row.MatchKey, StringComparer.Ordinal, cancellationToken);
        foreach (var line in batch)
        {
            if (line.MergedInto is { } into && _new.ContainsKey(line.MatchKey) && families.TryGetValue(into, out var target))
                families[line.MatchKey].MergedIntoId = target.MergedIntoId ?? target.Id;
            foreach (var relation in line.Relations.Where(relation => _new.ContainsKey(line.MatchKey) || _new.ContainsKey(relation.Other)))
            {
                if (!families.TryGetValue(line.MatchKey, out var one) || !families.TryGetValue(relation.Other, out var other))
                    continue;
                var (first, second) = await InOrderAsync(one.Id, other.Id, cancellationToken);
                context.FamilyRelations.Add(new FamilyRelation { OneId = first, OtherId = second, Kind = relation.Kind, Note = relation.Note, At = relation.At, Who = relation.Who ?? file.Manifest.Lab });
            }
        }

        await SaveAsync(cancellationToken);
    }

    // As the database orders ids, which is not as .NET does.
    private async Task<(FamilyId First, FamilyId Second)> InOrderAsync(FamilyId one, FamilyId other, CancellationToken cancellationToken) =>
        await context.Database.SqlQuery<bool>($"select {one.Value} < {other.Value} as \"Value\"").SingleAsync(cancellationToken) ? (one, other) : (other, one);

    private static List<string> Differing(ArchiveLine.Family line, ArchiveLine.Family here)
    {
        var (one, other) = (Fields(line), Fields(here));
        return [.. one.Select(pair => pair.Key).Where(name => !JsonNode.DeepEquals(one[name], other[name]))];

        static JsonObject Fields(ArchiveLine.Family family)
        {
            var fields = JsonSerializer.SerializeToNode(family, ArchiveJson.Options)!.AsObject();
            // Addresses are each lab's own, and relations depend on what else is in the archive.
            fields.Remove("slug");
            fields.Remove("relations");
            return fields;
        }
    }

    private static async Task<string> FreeSlugAsync(HashSet<string> taken, string wanted, Func<string, Task<bool>> isTaken, Tally tally, string name)
    {
        if (taken.Add(wanted))
            return wanted;
        var attempt = 2;
        while (!taken.Add(Slug.Numbered(wanted, attempt)) || await isTaken(Slug.Numbered(wanted, attempt)))
            attempt++;
        tally.Conflict($"{name}: the address “{wanted}” is taken here; it gets “{Slug.Numbered(wanted, attempt)}”.");
        return Slug.Numbered(wanted, attempt);
    }

    private async IAsyncEnumerable<List<T>> Batches<T>(string entry, [System.Runtime.CompilerServices.EnumeratorCancellation] CancellationToken cancellationToken)
    {
        var batch = new List<T>(ArchiveFamilies.Batch);
        await foreach (var line in file.LinesAsync(entry, cancellationToken))
        {
            batch.Add((T)line.Record);
            if (batch.Count == ArchiveFamilies.Batch)
            {
                yield return batch;
                batch = new List<T>(ArchiveFamilies.Batch);
            }
        }

        if (batch.Count > 0)
            yield return batch;
    }

    private async Task SaveAsync(CancellationToken cancellationToken)
    {
        await context.SaveChangesAsync(cancellationToken);
        context.ChangeTracker.Clear();
    }

    private sealed class Tally
    {
        private readonly List<string> _new = [];
        private readonly List<string> _differences = [];
        private readonly List<string> _conflicts = [];
        private int _newCount;
        private int _same;
        private int _differing;

        public void Add(string name)
        {
            _newCount++;
            Name(_new, name);
        }

        public void Know(string name, IReadOnlyList<string> differing)
        {
            if (differing.Count == 0)
            {
                _same++;
                return;
            }

            _differing++;
            Name(_differences, $"{name}: {string.Join(", ", differing)}");
        }

        public void Conflict(string text) => Name(_conflicts, text);

        public ArchiveReport.Matched ToReport() => new(_newCount, _same, _differing, _new, _differences, _conflicts);

        private static void Name(List<string> list, string text)
        {
            if (list.Count < ArchiveReport.MaxNamed)
                list.Add(text);
        }
    }
}
