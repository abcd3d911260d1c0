using Catalogue.Data.Questions;
using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
using Catalogue.Domain.Identification;
using Catalogue.Domain.Makers;
using Catalogue.Domain.Teardowns;
using Catalogue.Domain.Text;
using Npgsql;

namespace Catalogue.Data.Families;

/// <summary>
/// Finds the families that a marking may belong to: those whose keys meet the marking's, from the database; their order, from the domain.
/// </summary>
/// <param name="source">The data source.</param>
public sealed class MarkingCandidatesQuery(NpgsqlDataSource source)
{
    /// <summary>The most families that are weighed with all that is known of them: those whose names come nearest to the marking.</summary>
    public const int MaxWeighed = 60;

    // A mark of many lines is not looked for in all its readings with all errors.
    private const int FarReadings = 2;

    // A reading that takes more for granted than this does not end the search, however exactly it meets a name.
    private const float FarFrom = 1.5f;

    // The planner thinks that so many keys meet every row; they meet a few hundred.
    private const string Limits = "set local statement_timeout = '5s'; set local enable_seqscan = off";

    private const string NamesSql = """
        select coalesce(f.merged_into_id, f.id), f.match_key, f.letters, 'base_number', null::text
            from families f where f.marking_keys && $1
        union all
        select coalesce(f.merged_into_id, f.id), a.name, a.letters, a.kind, null
            from family_aliases a join families f on f.id = a.family_id where a.marking_keys && $1
        union all
        select coalesce(f.merged_into_id, f.id), m.code, m.letters, 'top_mark', k.name
            from family_top_marks m join families f on f.id = m.family_id left join makers k on k.id = m.maker_id where m.marking_keys && $1
        """;

    // Last resort for a mark of which much is missing: names that hold its longest piece, the shortest names first.
    private const string PieceSql = """
        select coalesce(f.merged_into_id, f.id), f.match_key, f.letters, 'base_number', null::text
            from families f where f.search_key like $1 order by length(f.letters), f.letters limit 500
        """;

    private const string FactsSql = """
        with seen as (
            select l.family_id, bool_or(r.state = 'published') as published,
                (count(distinct t.product_id) filter (where t.product_id <> $2 and t.id <> all($3) and (r.state = 'published' or $5)))::int as designs,
                mode() within group (order by c.function_class) filter (where c.function_class is not null and t.product_id <> $2 and (r.state = 'published' or $5)) as function_class,
                (array_agg(distinct c.package) filter (where c.package is not null and t.product_id <> $2 and (r.state = 'published' or $5)))[1:20] as packages,
                (count(distinct t.product_id) filter (where t.product_id <> $2 and t.id <> all($3) and (r.state = 'published' or $5) and cardinality($4) > 0 and exists (
                    select 1 from components n where n.revision_id = c.revision_id and n.board_id = c.board_id and n.family_id = any($4) and n.id <> c.id)))::int as beside
            from family_links l
            join components c on c.revision_id = l.revision_id and c.id = l.component_id
            join revisions r on r.id = l.revision_id
            join teardowns t on t.id = r.teardown_id
            where l.linked_family_id = any($6)
            group by l.family_id)
        select f.id, f.slug, f.name, coalesce(f.function_class, s.function_class), f.packages,
            array(select k.name_key from family_makers fm join makers k on k.id = fm.maker_id where fm.family_id = f.id
                union all select a.name_key from family_makers fm join maker_aliases a on a.maker_id = fm.maker_id where fm.family_id = f.id) as makers,
            coalesce(s.published, false), coalesce(s.designs, 0), s.packages, coalesce(s.beside, 0)
        from families f left join seen s on s.family_id = f.id
        where f.id = any($1)
        """;

    private const string KinSql = """
        with mine as (
            select distinct l.linked_family_id as family_id from family_links l join revisions r on r.id = l.revision_id where r.teardown_id = $1)
        select r.teardown_id from mine
            join family_links l on l.linked_family_id = mine.family_id
            join revisions r on r.id = l.revision_id and r.teardown_id <> $1
            group by r.teardown_id
            having count(distinct mine.family_id) >= greatest(4, 0.6 * (select count(*) from mine))
        """;

    /// <summary>A family that a marking may belong to.</summary>
    /// <param name="Slug">Its address.</param>
    /// <param name="Name">Its base number as first written.</param>
    /// <param name="Candidate">How probable it is, and why.</param>
    public sealed record Found(string Slug, string Name, Candidate Candidate);

    /// <summary>Where the marked part sits, so that its own unit does not count as having been seen.</summary>
    /// <param name="Teardown">The teardown.</param>
    /// <param name="Board">The board, or null.</param>
    public sealed record Place(TeardownId Teardown, BoardId? Board);

    /// <summary>The candidates, best first, at most <see cref="MarkingCandidates.MaxCandidates"/>.</summary>
    /// <param name="question">What was read; a marking longer than <see cref="MarkingReadings.MaxMarkingLength"/> throws.</param>
    /// <param name="place">Where it was read, or null.</param>
    /// <param name="seesDrafts">True for people and tokens that may see drafts; others never learn of a family that only drafts mention.</param>
    /// <param name="cancellationToken">Cancels the query.</param>
    public async Task<IReadOnlyList<Found>> RunAsync(MarkingQuestion question, Place? place, bool seesDrafts, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(question);
        await using var connection = await source.OpenConnectionAsync(cancellationToken);
        var makers = await MakersAsync(connection, question.Marking, cancellationToken);
        var readings = MarkingReadings.Of(question.Marking, line => makers.Contains(MakerName.Key(line)));
        if (readings.Count == 0)
            return [];
        // The maker's line of the marking speaks where nobody said who made the part.
        question = question with { Maker = question.Maker ?? MarkingReadings.Lines(question.Marking).Select(MakerName.Key).FirstOrDefault(makers.Contains) };

        await using var transaction = await connection.BeginTransactionAsync(cancellationToken);
        await connection.RunAsync(Limits, cancellationToken);
        var names = await NamesAsync(connection, readings, cancellationToken);
        var nearest = names
            .GroupBy(name => name.Family)
            .Select(group => new CandidateFamily { Id = group.Key, Names = [.. group.Select(name => name.Name)] })
            .Select(family => (Family: family, Cost: MarkingCandidates.TextCost(readings, family)))
            .Where(family => family.Cost < double.PositiveInfinity)
            .OrderBy(family => family.Cost)
            .ThenBy(family => family.Family.Id.Value)
            .Take(MaxWeighed)
            .Select(family => family.Family)
            .ToDictionary(family => family.Id);
        var known = await FactsAsync(connection, nearest, place, seesDrafts, cancellationToken);
        await transaction.CommitAsync(cancellationToken);
        return
        [
            .. MarkingCandidates.Rank(question, readings, known.Values.Select(facts => facts.Family))
                .Select(candidate => new Found(known[candidate.Family.Id].Slug, known[candidate.Family.Id].Name, candidate)),
        ];
    }

    private static async Task<HashSet<string>> MakersAsync(NpgsqlConnection connection, string marking, CancellationToken cancellationToken)
    {
        var lines = MarkingReadings.Lines(marking);
        var words = lines.Concat(lines.SelectMany(line => line.Split(' '))).Select(MakerName.Key).Where(key => key.Length > 0).Distinct().ToArray();
        // One line that is one word is the number itself.
        return words.Length < 2
            ? []
            : [.. await connection.ReadAsync("select name_key from makers where name_key = any($1) union select name_key from maker_aliases where name_key = any($1)", row => row.GetString(0), cancellationToken, words)];
    }

    private static async Task<List<(FamilyId Family, FamilyName Name)>> NamesAsync(NpgsqlConnection connection, IReadOnlyList<MarkingReading> readings, CancellationToken cancellationToken)
    {
        var near = Keys(readings, far: 0);
        var names = await ReadNamesAsync(connection, NamesSql, near, cancellationToken);
        // What was read exactly is not looked for two errors away.
        if (names.Any(name => readings.Any(reading => reading.Signs == name.Name.Letters && reading.Cost < FarFrom)))
            return names;
        var far = Keys(readings, FarReadings);
        names.AddRange(await ReadNamesAsync(connection, NamesSql, far.Except(near).ToArray(), cancellationToken));
        if (names.Count == 0 && LongestPiece(readings[0].Signs) is { Length: >= 3 } piece)
            names = await ReadNamesAsync(connection, PieceSql, $"%{piece}%", cancellationToken);
        return [.. names.Distinct()];
    }

    private static string[] Keys(IReadOnlyList<MarkingReading> readings, int far)
    {
        var keys = new HashSet<string>(StringComparer.Ordinal);
        for (var i = 0; i < readings.Count; i++)
            MarkingKeys.AddProbes(keys, readings[i].Signs, far: i < far);
        return [.. keys];
    }

    private static string LongestPiece(string signs) => signs.Split(MarkingFold.Unreadable).MaxBy(piece => piece.Length) ?? "";

    private static async Task<List<(FamilyId Family, FamilyName Name)>> ReadNamesAsync(NpgsqlConnection connection, string sql, SqlValue parameter, CancellationToken cancellationToken)
    {
        var names = await connection.ReadAsync(
            sql,
            row => (FamilyId.From(row.GetGuid(0)), new FamilyName(row.GetString(1), row.GetString(2), SnakeCase.TryParse<FamilyNameKind>(row.GetString(3)) ?? FamilyNameKind.OtherNumber, row.Text(4))),
            cancellationToken,
            parameter);
        names.RemoveAll(name => name.Item2.Letters.Length == 0);
        return names;
    }

    private static async Task<Dictionary<FamilyId, (string Slug, string Name, CandidateFamily Family)>> FactsAsync(
        NpgsqlConnection connection, Dictionary<FamilyId, CandidateFamily> families, Place? place, bool seesDrafts, CancellationToken cancellationToken)
    {
        if (families.Count == 0)
            return [];
        var (product, kin, beside) = await UnitAsync(connection, place, cancellationToken);
        var ids = families.Keys.Select(id => id.Value).ToArray();
        // Only an array that is known when the plan is made leads into both halves of the view.
        var members = await IdsAsync(connection, FamilyMembers.Sql, cancellationToken, ids);
        var rows = await connection.ReadAsync(
            FactsSql,
            row => (
                Id: FamilyId.From(row.GetGuid(0)),
                Slug: row.GetString(1),
                Name: row.GetString(2),
                IsPublished: row.GetBoolean(6),
                Known: new CandidateFamily
                {
                    Id = FamilyId.From(row.GetGuid(0)),
                    Names = families[FamilyId.From(row.GetGuid(0))].Names,
                    FunctionClass = SnakeCase.TryParse<FunctionClass>(row.Text(3)),
                    Packages = [.. row.Texts(4).Concat(row.Texts(8)).Distinct(StringComparer.OrdinalIgnoreCase)],
                    Makers = row.Texts(5),
                    SeenInDesigns = row.GetInt32(7),
                    SeenBeside = row.GetInt32(9),
                }),
            cancellationToken,
            ids,
            product,
            kin,
            beside,
            seesDrafts,
            members);
        return rows.Where(row => seesDrafts || row.IsPublished).ToDictionary(row => row.Id, row => (row.Slug, row.Name, row.Known));
    }

    // The unit itself, other samples of the product, and designs that share most of its families say nothing new.
    private static async Task<(Guid Product, Guid[] Kin, Guid[] Beside)> UnitAsync(NpgsqlConnection connection, Place? place, CancellationToken cancellationToken)
    {
        if (place is null)
            return (Guid.Empty, [], []);
        var product = (await IdsAsync(connection, "select product_id from teardowns where id = $1", cancellationToken, place.Teardown.Value)).SingleOrDefault();
        var kin = await IdsAsync(connection, KinSql, cancellationToken, place.Teardown.Value);
        var beside = place.Board is { } board
            ? await IdsAsync(
                connection,
                "select distinct c.family_id from revisions r join components c on c.revision_id = r.id where r.teardown_id = $1 and c.board_id = $2 and c.family_id is not null",
                cancellationToken,
                place.Teardown.Value,
                board.Value)
            : [];
        return (product, kin, beside);
    }

    private static async Task<Guid[]> IdsAsync(NpgsqlConnection connection, string sql, CancellationToken cancellationToken, params SqlValue[] parameters) =>
        [.. await connection.ReadAsync(sql, row => row.GetGuid(0), cancellationToken, parameters)];
}
