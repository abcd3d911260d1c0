using Catalogue.Data.Questions;
using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
using Catalogue.Domain.Identification;
using Catalogue.Domain.Packages;
using Catalogue.Domain.Products;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Text;
using Npgsql;

namespace Catalogue.Data.Families;

/// <summary>
/// Finds the families beside one: second sources, look-alikes, versions. Candidates come from the database by class and package and by the keys of their
/// numbers; what they are is for <see cref="FamilyNeighbours"/> to say.
/// </summary>
/// <param name="source">The data source.</param>
public sealed class FamilyNeighboursQuery(NpgsqlDataSource source)
{
    /// <summary>Most families whose number is looked at; of one series no more are told apart.</summary>
    public const int MaxNames = 3000;

    /// <summary>Most families of the same class whose packages are looked at, those seen in most designs.</summary>
    public const int MaxOfClass = 2000;

    /// <summary>Most families of the same class and package whose ratings are weighed.</summary>
    public const int MaxWeighed = 300;

    private const int MaxAlike = 100;
    private const int MaxRows = 20_000;

    private const string FindSql = "select coalesce(m.id, f.id), coalesce(m.slug, f.slug), m.id is not null from families f left join families m on m.id = f.merged_into_id where f.slug = $1";

    private const string WordsSql = """
        select coalesce(f.merged_into_id, f.id), w.kind, w.note
            from (select case when one_id = any($1) then other_id else one_id end as other_id, kind, note, at from family_relations where one_id = any($1) or other_id = any($1)) w
            join families f on f.id = w.other_id
            order by w.at
        """;

    private const string NamesSql = """
        select k.family_id, k.name from (
            select coalesce(merged_into_id, id) as family_id, match_key as name, letters from families where marking_keys && $1
            union
            select coalesce(f.merged_into_id, f.id), a.name, a.letters from family_aliases a join families f on f.id = a.family_id where a.marking_keys && $1) k
        order by abs(length(k.letters) - $2), k.letters, k.family_id
        limit $3
        """;

    /// <summary>What came of it.</summary>
    public abstract record Answer
    {
        private Answer()
        {
        }

        /// <summary>The neighbours; each list may be empty.</summary>
        /// <param name="Slug">The family's address.</param>
        /// <param name="Asked">What is known of the family itself.</param>
        /// <param name="SecondSources">What could take its place.</param>
        /// <param name="LookAlikes">What is easily mistaken for it.</param>
        /// <param name="Versions">What differs by an ending.</param>
        public sealed record Found(string Slug, FamilyFacts Asked, IReadOnlyList<Row> SecondSources, IReadOnlyList<Row> LookAlikes, IReadOnlyList<Row> Versions) : Answer;

        /// <summary>It was merged into another one.</summary>
        /// <param name="Slug">The other one's address.</param>
        public sealed record Moved(string Slug) : Answer;

        /// <summary>There is none that the asker may see.</summary>
        public sealed record Nothing : Answer;
    }

    /// <summary>A neighbour.</summary>
    /// <param name="Slug">Its address.</param>
    /// <param name="Makers">The makers known for it, by name.</param>
    /// <param name="Neighbour">What it is, and why.</param>
    public sealed record Row(string Slug, IReadOnlyList<string> Makers, FamilyNeighbour Neighbour);

    /// <summary>The neighbours of a family.</summary>
    /// <param name="slug">Its address.</param>
    /// <param name="seesDrafts">True for people and tokens that may see drafts; others learn nothing that only drafts hold, neither families nor ratings.</param>
    /// <param name="cancellationToken">Cancels the query.</param>
    public async Task<Answer> RunAsync(string slug, bool seesDrafts, CancellationToken cancellationToken = default)
    {
        await using var connection = await source.OpenConnectionAsync(cancellationToken);
        await using var transaction = await connection.BeginTransactionAsync(cancellationToken);
        await connection.RunAsync("set local statement_timeout = '5s'", cancellationToken);
        var found = await connection.ReadAsync(FindSql, row => (Id: FamilyId.From(row.GetGuid(0)), Slug: row.GetString(1), IsMoved: row.GetBoolean(2)), cancellationToken, slug);
        if (found is not [var asked])
            return new Answer.Nothing();
        var packages = new Dictionary<string, PackageReading>(StringComparer.OrdinalIgnoreCase);
        if (await FactsAsync(connection, [asked.Id], seesDrafts, packages, cancellationToken) is not [var itself])
            return new Answer.Nothing();
        if (asked.IsMoved)
            return new Answer.Moved(asked.Slug);

        var members = await MembersAsync(connection, [asked.Id], cancellationToken);
        var words = new Dictionary<FamilyId, FamilyWord>();
        foreach (var (id, word) in await connection.ReadAsync(WordsSql, row => (FamilyId.From(row.GetGuid(0)), new FamilyWord(SnakeCase.TryParse<FamilyRelationKind>(row.GetString(1)) ?? FamilyRelationKind.LookAlike, row.Text(2))), cancellationToken, members))
            words[id] = word;
        var candidates = words.Keys
            .Concat(await AlikeAsync(connection, itself.Facts, cancellationToken))
            .Concat(await OfClassAsync(connection, itself.Facts, seesDrafts, packages, cancellationToken))
            .Where(id => id != asked.Id)
            .Distinct()
            .ToList();
        var others = await FactsAsync(connection, candidates, seesDrafts, packages, cancellationToken);
        others = await WithRolesAsync(connection, others.Append(itself), members, seesDrafts, cancellationToken);
        await transaction.CommitAsync(cancellationToken);

        var known = others.ToDictionary(other => other.Facts.Id);
        var neighbours = FamilyNeighbours.Of(known[asked.Id].Facts, known.Values.Select(other => other.Facts), words);
        return new Answer.Found(asked.Slug, known[asked.Id].Facts, Rows(neighbours.SecondSources), Rows(neighbours.LookAlikes), Rows(neighbours.Versions));

        IReadOnlyList<Row> Rows(IReadOnlyList<FamilyNeighbour> list) => [.. list.Select(one => new Row(known[one.Family.Id].Slug, known[one.Family.Id].Makers, one))];
    }

    // The families whose number, or one of whose numbers, meets one of the asked family's.
    private static async Task<IEnumerable<FamilyId>> AlikeAsync(NpgsqlConnection connection, FamilyFacts asked, CancellationToken cancellationToken)
    {
        var names = asked.OtherNames.Prepend(asked.Name).Take(20).ToList();
        var keys = new HashSet<string>(StringComparer.Ordinal);
        foreach (var name in names)
        {
            MarkingKeys.AddProbes(keys, MarkingKeys.Letters(name), far: false);
            keys.Add(MarkingKeys.Skeleton(NameLikeness.Stem(name)));
        }

        keys.Remove("");
        // The planner thinks that so many keys meet every row; they meet a few hundred.
        await connection.RunAsync("set local enable_seqscan = off", cancellationToken);
        var met = await connection.ReadAsync(NamesSql, row => (Id: FamilyId.From(row.GetGuid(0)), Name: row.GetString(1)), cancellationToken, keys.ToArray(), MarkingKeys.Letters(asked.Name).Length, MaxNames);
        await connection.RunAsync("set local enable_seqscan = on", cancellationToken);
        return met
            .Where(other => other.Id != asked.Id)
            .Select(other => (other.Id, Likeness: names.Max(name => other.Name.Length <= PartFamily.MaxNameLength ? NameLikeness.Of(name, other.Name)?.Similarity : null)))
            .Where(other => other.Likeness is not null)
            .GroupBy(other => other.Id)
            .OrderByDescending(group => group.Max(other => other.Likeness))
            .ThenBy(group => group.Key.Value)
            .Take(MaxAlike)
            .Select(group => group.Key);
    }

    // Those of the same class in the same package; where a package is not known, what is left of the room.
    private static async Task<IEnumerable<FamilyId>> OfClassAsync(NpgsqlConnection connection, FamilyFacts asked, bool seesDrafts, Dictionary<string, PackageReading> packages, CancellationToken cancellationToken)
    {
        if (asked.FunctionClass is not { } functionClass || asked.Ratings.Count == 0)
            return [];
        var classes = SecondSource.ClassesBeside(functionClass).Select(SnakeCase.Code).ToArray();
        var sql = $"""
            select f.id, f.packages, s.packages from families f left join (
                select l.family_id, (array_agg(distinct c.package) filter (where c.package is not null))[1:20] as packages, count(distinct r.teardown_id) as designs
                    from components c
                    join revisions r on r.id = c.revision_id
                    join family_links l on l.revision_id = c.revision_id and l.component_id = c.id
                    join families f on f.id = l.family_id
                    where {FamilyVisibility.Seen(seesDrafts)} and (f.function_class = any($1) or f.function_class is null and c.function_class = any($1))
                    group by l.family_id) s on s.family_id = f.id
                where f.merged_into_id is null and (s.family_id is not null or {(seesDrafts ? "f.function_class = any($1)" : "false")})
                order by s.designs desc nulls last, f.id
                limit $2
            """;
        var found = await connection.ReadAsync(sql, row => (Id: FamilyId.From(row.GetGuid(0)), Packages: row.Texts(1).Concat(row.Texts(2)).ToList()), cancellationToken, classes, MaxOfClass);
        return found
            .Select(family => (family.Id, Agreement: PackageAgreement.Best(asked.Packages, [.. family.Packages.Select(package => Read(packages, package))]).Kind))
            .Where(family => family.Agreement is PackageAgreementKind.Same or PackageAgreementKind.Compatible or PackageAgreementKind.NotKnown)
            // A stable sort: those seen most often stay first.
            .OrderBy(family => family.Agreement)
            .Take(MaxWeighed)
            .Select(family => family.Id);
    }

    // All that is known of families as far as the asker may see it; those he may not see are left out.
    private static async Task<List<Known>> FactsAsync(NpgsqlConnection connection, IReadOnlyCollection<FamilyId> families, bool seesDrafts, Dictionary<string, PackageReading> packages, CancellationToken cancellationToken)
    {
        if (families.Count == 0)
            return [];
        var ids = families.Select(id => id.Value).ToArray();
        var members = await MembersAsync(connection, families, cancellationToken);
        var seen = FamilyVisibility.Seen(seesDrafts);
        // Only an array that is known when the plan is made leads into both halves of the view.
        var familySql = $"""
            with seen as (
                select l.family_id, count(distinct t.product_id)::int as designs, (array_agg(distinct c.package) filter (where c.package is not null))[1:20] as packages,
                    mode() within group (order by c.function_class) as function_class
                from family_links l
                join components c on c.revision_id = l.revision_id and c.id = l.component_id
                join revisions r on r.id = l.revision_id
                join teardowns t on t.id = r.teardown_id
                where l.linked_family_id = any($2) and {seen}
                group by l.family_id)
            select f.id, f.slug, f.name, coalesce(f.function_class, s.function_class), f.packages, s.packages, coalesce(s.designs, 0),
                array(select k.name from family_makers fm join makers k on k.id = fm.maker_id where fm.family_id = f.id order by k.name)
            from families f left join seen s on s.family_id = f.id
            where f.id = any($1) and ({(seesDrafts ? "true" : "s.family_id is not null")})
            """;
        var ratingsSql = $"""
            select distinct l.family_id, g.kind, g.low, g.nominal, g.high, g.condition, g.evidence
                from family_links l
                join revisions r on r.id = l.revision_id
                join ratings g on g.revision_id = l.revision_id and g.component_id = l.component_id
                where l.linked_family_id = any($1) and {seen}
                limit $2
            """;
        const string TypicalSql = """
            select coalesce(f.merged_into_id, f.id), g.kind, g.low, g.nominal, g.high, g.condition, g.evidence from family_ratings g join families f on f.id = g.family_id
                where g.family_id = any($1) order by g.id limit $2
            """;
        const string NumbersSql = """
            select coalesce(f.merged_into_id, f.id), n.name from (
                select family_id, name from family_aliases where family_id = any($1)
                union select id, name from families where id = any($1) and merged_into_id is not null) n
            join families f on f.id = n.family_id order by n.name limit $2
            """;
        var ratings = (await connection.ReadAsync(ratingsSql, Stated, cancellationToken, members, MaxRows)).ToLookup(row => row.Id, row => row.Rating);
        var typical = (await connection.ReadAsync(TypicalSql, Stated, cancellationToken, members, MaxRows)).ToLookup(row => row.Id, row => row.Rating);
        var numbers = (await connection.ReadAsync(NumbersSql, row => (Id: FamilyId.From(row.GetGuid(0)), Name: row.GetString(1)), cancellationToken, members, MaxRows)).ToLookup(row => row.Id, row => row.Name);
        return await connection.ReadAsync(
            familySql,
            row =>
            {
                var id = FamilyId.From(row.GetGuid(0));
                return new Known(
                    row.GetString(1),
                    row.Texts(7),
                    new FamilyFacts
                    {
                        Id = id,
                        Name = row.GetString(2),
                        OtherNames = [.. numbers[id].Where(name => name.Length <= PartFamily.MaxNameLength)],
                        FunctionClass = SnakeCase.TryParse<FunctionClass>(row.Text(3)),
                        Packages = [.. row.Texts(4).Concat(row.Texts(5)).Distinct(StringComparer.OrdinalIgnoreCase).Select(package => Read(packages, package))],
                        Ratings = StatedRating.Choose([.. typical[id].OfType<StatedRating>()], ratings[id].OfType<StatedRating>()),
                        Designs = row.GetInt32(6),
                    });
            },
            cancellationToken,
            ids,
            members);
    }

    // Only roles in which the asked family was seen matter, so only those are read.
    private static async Task<List<Known>> WithRolesAsync(NpgsqlConnection connection, IEnumerable<Known> families, Guid[] asked, bool seesDrafts, CancellationToken cancellationToken)
    {
        const string Key = "regexp_replace(upper(btrim(c.role)), '\\s+', ' ', 'g')";
        var all = families.ToList();
        var seen = FamilyVisibility.Seen(seesDrafts);
        var sql = $"""
            with mine as materialized (
                select distinct {Key} as role, c.circuit_position
                    from family_links l
                    join components c on c.revision_id = l.revision_id and c.id = l.component_id
                    join revisions r on r.id = l.revision_id
                    where l.linked_family_id = any($1) and {seen} and (c.role is not null or c.circuit_position is not null))
            select distinct l.family_id, t.product_id, case when m.role is not null then c.role end, case when p.circuit_position is not null then c.circuit_position end
                from family_links l
                join components c on c.revision_id = l.revision_id and c.id = l.component_id
                join revisions r on r.id = l.revision_id
                join teardowns t on t.id = r.teardown_id
                left join (select distinct role from mine where role is not null) m on m.role = {Key}
                left join (select distinct circuit_position from mine where circuit_position is not null) p on p.circuit_position = c.circuit_position
                where l.linked_family_id = any($2) and {seen} and (m.role is not null or p.circuit_position is not null)
                limit $3
            """;
        var members = await MembersAsync(connection, [.. all.Select(family => family.Facts.Id)], cancellationToken);
        var roles = (await connection.ReadAsync(
                sql,
                row => (Id: FamilyId.From(row.GetGuid(0)), Product: ProductId.From(row.GetGuid(1)), Words: new[] { row.Text(2), SnakeCase.TryParse<CircuitPosition>(row.Text(3))?.Word() }),
                cancellationToken,
                asked,
                members,
                MaxRows))
            .SelectMany(row => row.Words.OfType<string>().Select(words => (row.Id, Role: new SeenRole(words, row.Product))))
            .ToLookup(row => row.Id, row => row.Role);
        return [.. all.Select(family => family with { Facts = family.Facts with { Roles = [.. roles[family.Facts.Id]] } })];
    }

    private static PackageReading Read(Dictionary<string, PackageReading> read, string package)
    {
        if (!read.TryGetValue(package, out var reading))
            read[package] = reading = PackageText.Read(package);
        return reading;
    }

    private static (FamilyId Id, StatedRating? Rating) Stated(NpgsqlDataReader row)
    {
        var rating = SnakeCase.TryParse<RatingKind>(row.GetString(1)) is { } kind
            && Interval.TryCreate(row.GetDouble(2), row.GetDouble(3), row.GetDouble(4)) is { } value
            && SnakeCase.TryParse<Evidence>(row.GetString(6)) is { } evidence
            ? StatedRating.From(kind, value, row.Text(5), evidence)
            : null;
        return (FamilyId.From(row.GetGuid(0)), rating);
    }

    private static async Task<Guid[]> MembersAsync(NpgsqlConnection connection, IReadOnlyCollection<FamilyId> families, CancellationToken cancellationToken) =>
        [.. await connection.ReadAsync(FamilyMembers.Sql, row => row.GetGuid(0), cancellationToken, families.Select(id => id.Value).ToArray())];

    private sealed record Known(string Slug, IReadOnlyList<string> Makers, FamilyFacts Facts);
}
