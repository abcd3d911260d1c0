using System.Globalization;
using System.Text;
using System.Text.Json;
using Catalogue.Data.Conversions;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Products;
using Catalogue.Domain.Questions;
using Catalogue.Domain.Teardowns;
using Catalogue.Domain.Text;
using Npgsql;
using NpgsqlTypes;

namespace Catalogue.Data.Questions;

/// <summary>
/// Answers a question with SQL over indexed rows. Every value is a parameter; that only published revisions are seen is written in one
/// place, <see cref="Published"/>.
/// </summary>
/// <param name="source">The data source.</param>
public sealed class AskQuery(NpgsqlDataSource source)
{
    // Longer than any honest question; a runaway one ends here.
    private const string TimeLimit = "set local statement_timeout = '5s'";

    // The one condition on which every answer rests. Each query joins revisions as r.
    private const string Published = "r.state = 'published'";

    private const string ComponentName =
        "coalesce(nullif(c.designators, ''), c.role, c.marking_as_read, c.part_number, c.value, 'component ' || (c.position + 1)::text)";

    private static readonly AnswerColumn[] DesignColumns =
    [
        new("product", "Design", "text"),
        new("category", "Category", "text"),
        new("family", "Part family", "text"),
        new("components", "Components", "number"),
        new("published_at", "Published", "date"),
    ];

    private static readonly AnswerColumn[] ComponentColumns =
    [
        new("product", "Design", "text"),
        new("category", "Category", "text"),
        new("board", "Board", "text"),
        new("component_name", "Component", "text"),
        new("family", "Part family", "text"),
        new("published_at", "Published", "date"),
    ];

    private static readonly AnswerColumn[] RankedColumns =
    [
        new("rank", "Rank", "number"),
        new("product", "Design", "text"),
        new("category", "Category", "text"),
        new("board", "Board", "text"),
        new("component_name", "Component", "text"),
        new("low", "Low", "number", Domain.Quantities.Unit.Ratio),
        new("nominal", "Nominal", "number", Domain.Quantities.Unit.Ratio),
        new("high", "High", "number", Domain.Quantities.Unit.Ratio),
        new("verdict", "Verdict", "verdict"),
    ];

    /// <summary>Answers a question.</summary>
    /// <returns>The answer, or why the question cannot be asked. A family that nothing published uses gives no rows, as one that does not exist.</returns>
    public async Task<ChangeOutcome<Answer>> RunAsync(Question question, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(question);
        if (question.Refuse() is { } reason)
            return new ChangeOutcome<Answer>.Refused(null, reason);
        var mark = PageMark.TryParse(question.After);
        if (question.After is not null && (question.RankBy is null ? mark?.Moment is null : mark?.Number is null))
            return new ChangeOutcome<Answer>.Refused("after", "after is the mark that the previous answer gave under next; this text is none.");

        await using var connection = await source.OpenConnectionAsync(cancellationToken);
        await using var transaction = await connection.BeginTransactionAsync(System.Data.IsolationLevel.RepeatableRead, cancellationToken);
        await connection.RunAsync(TimeLimit, cancellationToken);
        var answer = question switch
        {
            { Subject: QuestionSubject.Designs } => await DesignsAsync(connection, question, mark, cancellationToken),
            { RankBy: { } rank } => await RankedAsync(connection, question, rank, mark, cancellationToken),
            _ => await ComponentsAsync(connection, question, mark, cancellationToken),
        };
        await transaction.CommitAsync(cancellationToken);
        return new ChangeOutcome<Answer>.Done(answer);
    }

    private static async Task<Answer> DesignsAsync(NpgsqlConnection connection, Question question, PageMark? mark, CancellationToken cancellationToken)
    {
        var sql = new Sql();
        var where = Conditions(sql, question, designs: true);
        var first = question.Has.Count > 0 ? sql.Add(question.Has[0].Family) : null;
        var counted = first is null
            ? "null::bigint as components, null::text as family"
            : $"(select count(*) from ({FamilyParts(first)}) p where p.revision_id = r.id) as components, (select coalesce(t.name, f.name) from families f left join families t on t.id = f.merged_into_id where f.slug = {first}) as family";
        var after = mark is { Moment: { } moment } ? $" and (r.published_at, r.id) < ({sql.Add(moment)}, {sql.Add(mark.Id)})" : "";
        var rows = await ReadAsync(
            connection,
            sql,
            $"""
            select t.slug, r.brand || ' ' || r.product_name as product, r.category, r.published_at, r.id, {counted}
            from revisions r join teardowns t on t.id = r.teardown_id
            where {Published}{where}{after}
            order by r.published_at desc, r.id desc limit {sql.Add(question.Limit + 1)}
            """,
            reader => (Id: reader.GetGuid(4), Row: new AnswerRow
            {
                Teardown = reader.GetString(0),
                Product = reader.GetString(1),
                Category = SnakeCase.TryParse<ProductCategory>(reader.GetString(2)) ?? ProductCategory.Other,
                PublishedAt = reader.GetFieldValue<DateTimeOffset>(3),
                Components = reader.IsDBNull(5) ? null : (int)reader.GetInt64(5),
                Family = reader.IsDBNull(6) ? null : reader.GetString(6),
            }),
            cancellationToken);
        var count = new Sql();
        var total = await CountAsync(connection, count, $"select count(*) from revisions r where {Published}{Conditions(count, question, designs: true)}", cancellationToken);
        var columns = first is null ? DesignColumns.Where(column => column.Name is not ("family" or "components")).ToArray() : DesignColumns;
        return Page(columns, rows, question.Limit, last => PageMark.Of(last.Row.PublishedAt, last.Id), NotRanked.Nothing, total);
    }

    private static async Task<Answer> ComponentsAsync(NpgsqlConnection connection, Question question, PageMark? mark, CancellationToken cancellationToken)
    {
        var sql = new Sql();
        var where = Conditions(sql, question, designs: false);
        var after = mark is { Moment: { } moment } ? $" and (r.published_at, c.id) < ({sql.Add(moment)}, {sql.Add(mark.Id)})" : "";
        var rows = await ReadAsync(
            connection,
            sql,
            $"""
            select t.slug, r.brand || ' ' || r.product_name, r.category, r.published_at, c.id, {ComponentName}, b.position, b.name, coalesce(ft.name, f.name)
            from components c
            join revisions r on r.id = c.revision_id join teardowns t on t.id = r.teardown_id
            join boards b on b.revision_id = c.revision_id and b.id = c.board_id
            left join family_moves mv on mv.revision_id = c.revision_id and mv.component_id = c.id
            left join families f on f.id = coalesce(mv.family_id, c.family_id) left join families ft on ft.id = f.merged_into_id
            where {Published}{where}{after}
            order by r.published_at desc, c.id desc limit {sql.Add(question.Limit + 1)}
            """,
            reader => (Id: reader.GetGuid(4), Row: ComponentRow(reader)),
            cancellationToken);
        var count = new Sql();
        var total = await CountAsync(
            connection, count, $"select count(*) from components c join revisions r on r.id = c.revision_id where {Published}{Conditions(count, question, designs: false)}", cancellationToken);
        return Page(ComponentColumns, rows, question.Limit, last => PageMark.Of(last.Row.PublishedAt, last.Id), NotRanked.Nothing, total);
    }

    private static async Task<Answer> RankedAsync(NpgsqlConnection connection, Question question, QuestionRank rank, PageMark? mark, CancellationToken cancellationToken)
    {
        // The column's name comes from an enumeration, never from the caller.
        var key = rank.By is RankCase.Nominal ? "g.nominal" : "g.low";
        const string from = """
            from current_figures g
            join revisions r on r.id = g.revision_id join teardowns t on t.id = r.teardown_id
            join components c on c.revision_id = g.revision_id and c.id = g.component_id
            join boards b on b.revision_id = c.revision_id and b.id = c.board_id
            left join family_moves mv on mv.revision_id = c.revision_id and mv.component_id = c.id
            left join families f on f.id = coalesce(mv.family_id, c.family_id) left join families ft on ft.id = f.merged_into_id
            """;
        var sql = new Sql();
        var where = $"{Published} and g.rule = {sql.Add(rank.Figure)}{Conditions(sql, question, designs: false)}";
        var after = mark is { Number: { } number } ? $" and ({key}, g.component_id) > ({sql.Add(number)}, {sql.Add(mark.Id)})" : "";
        var rows = await ReadAsync(
            connection,
            sql,
            $"""
            select t.slug, r.brand || ' ' || r.product_name, r.category, r.published_at, c.id, {ComponentName}, b.position, b.name, coalesce(ft.name, f.name),
                   g.low, g.nominal, g.high, g.verdict, g.static_only, g.working
            {from}
            where {where} and {key} is not null{after}
            order by {key}, g.component_id limit {sql.Add(question.Limit + 1)}
            """,
            reader => (Id: reader.GetGuid(4), Row: ComponentRow(reader) with
            {
                Low = reader.GetDouble(9),
                Nominal = reader.GetDouble(10),
                High = reader.GetDouble(11),
                Verdict = SnakeCase.TryParse<Verdict>(reader.GetString(12)),
                StaticOnly = reader.GetBoolean(13),
                Working = JsonSerializer.Deserialize<Working>(reader.GetString(14), StoredJson.Options),
            }),
            cancellationToken);

        var count = new Sql();
        var counted = $"{from} where {Published} and g.rule = {count.Add(rank.Figure)}{Conditions(count, question, designs: false)} and {key} is not null";
        var total = await CountAsync(connection, count, "select count(*) " + counted, cancellationToken);
        var page = Page(RankedColumns, rows, question.Limit, last => PageMark.Of((rank.By is RankCase.Nominal ? last.Row.Nominal : last.Row.Low)!.Value, last.Id), await NotRankedAsync(connection, question, rank, from, key, cancellationToken), total);
        return page with { Rows = await RankAsync(connection, question, rank, from, key, page.Rows, rows, cancellationToken) };
    }

    // A rank is one more than the number of figures that are smaller when rounded to two decimals, on whatever page.
    private static async Task<IReadOnlyList<AnswerRow>> RankAsync(
        NpgsqlConnection connection, Question question, QuestionRank rank, string from, string key, IReadOnlyList<AnswerRow> page, List<(Guid Id, AnswerRow Row)> fetched, CancellationToken cancellationToken)
    {
        if (page.Count == 0)
            return page;
        var sql = new Sql();
        var keys = sql.Add(fetched.Select(row => Rounded(row.Row, rank)).Distinct().ToArray());
        var where = $"{Published} and g.rule = {sql.Add(rank.Figure)}{Conditions(sql, question, designs: false)} and {key} is not null";
        var places = (await ReadAsync(
            connection,
            sql,
            $"""
            with ranked as (select round({key}::numeric, 2)::float8 as value {from} where {where})
            select k.value, (select count(*) from ranked where ranked.value < k.value), (select count(*) from ranked where ranked.value = k.value)
            from unnest({keys}) as k(value)
            """,
            reader => (Value: reader.GetDouble(0), Smaller: (int)reader.GetInt64(1), Same: (int)reader.GetInt64(2)),
            cancellationToken)).ToDictionary(place => place.Value);
        return [.. page.Select(row => places.TryGetValue(Rounded(row, rank), out var place) ? row with { Rank = place.Smaller + 1, IsTied = place.Same > 1 } : row)];
    }

    private static double Rounded(AnswerRow row, QuestionRank rank) =>
        (double)Math.Round((decimal)Math.Clamp((rank.By is RankCase.Nominal ? row.Nominal : row.Low) ?? 0, -1e15, 1e15), 2, MidpointRounding.AwayFromZero);

    private static async Task<NotRanked> NotRankedAsync(NpgsqlConnection connection, Question question, QuestionRank rank, string from, string key, CancellationToken cancellationToken)
    {
        var sql = new Sql();
        var unknown = $"{from} where {Published} and g.rule = {sql.Add(rank.Figure)}{Conditions(sql, question, designs: false)} and {key} is null";
        var count = await CountAsync(connection, sql, "select count(*) " + unknown, cancellationToken);
        if (count == 0)
            return NotRanked.Nothing;
        sql = new Sql();
        unknown = $"{from} where {Published} and g.rule = {sql.Add(rank.Figure)}{Conditions(sql, question, designs: false)} and {key} is null";
        var reasons = await ReadAsync(
            connection,
            sql,
            $"select m ->> 'code', min(m ->> 'words'), count(*) from (select g.missing {unknown}) u cross join lateral jsonb_array_elements(u.missing) m group by 1 order by 3 desc, 1",
            reader => new NotRanked.Reason(reader.GetString(0), reader.GetString(1), (int)reader.GetInt64(2)),
            cancellationToken);
        sql = new Sql();
        unknown = $"{from} where {Published} and g.rule = {sql.Add(rank.Figure)}{Conditions(sql, question, designs: false)} and {key} is null";
        var rows = await ReadAsync(
            connection,
            sql,
            $"select t.slug, r.brand || ' ' || r.product_name, {ComponentName}, g.missing {unknown} order by 2, 3, g.component_id limit 100",
            reader => new NotRanked.Row(
                reader.GetString(0),
                reader.GetString(1),
                reader.GetString(2),
                [.. JsonSerializer.Deserialize<List<MissingInput>>(reader.GetString(3), StoredJson.Options)!.Select(missing => missing.Words)]),
            cancellationToken);
        return new NotRanked(count, reasons, rows);
    }

    private static AnswerRow ComponentRow(NpgsqlDataReader reader) => new()
    {
        Teardown = reader.GetString(0),
        Product = reader.GetString(1),
        Category = SnakeCase.TryParse<ProductCategory>(reader.GetString(2)) ?? ProductCategory.Other,
        PublishedAt = reader.GetFieldValue<DateTimeOffset>(3),
        Component = ComponentId.From(reader.GetGuid(4)),
        ComponentName = reader.GetString(5),
        Board = $"{Board.Letter(reader.GetInt32(6))}, {reader.GetString(7)}",
        Family = reader.IsDBNull(8) ? null : reader.GetString(8),
    };

    // A design has the family when one of its components is of it; a component is of the family itself.
    private static string Conditions(Sql sql, Question question, bool designs)
    {
        var text = new StringBuilder();
        foreach (var condition in question.Has)
        {
            var parts = FamilyParts(sql.Add(condition.Family));
            text.Append(designs ? $" and r.id in (select p.revision_id from ({parts}) p)" : $" and (c.revision_id, c.id) in ({parts})");
        }

        if (question.Category is { } category)
            text.Append(CultureInfo.InvariantCulture, $" and r.category = {sql.Add(SnakeCase.Code(category))}");
        return text.ToString();
    }

    // The parts that count to a family now: to itself, to those merged into it, and, asked by a merged one's address, to the one it went into with all its
    // members. What a split moved counts where it went. The same as the view family_links, written so that the family's index is used.
    private static string FamilyParts(string slug)
    {
        var members = $"select m.id from families m join families s on s.slug = {slug} where coalesce(m.merged_into_id, m.id) = coalesce(s.merged_into_id, s.id)";
        return $"""
            select h.revision_id, h.id as component_id from components h where h.family_id in ({members})
                and not exists (select 1 from family_moves v where v.revision_id = h.revision_id and v.component_id = h.id)
            union all
            select v.revision_id, v.component_id from family_moves v where v.family_id in ({members})
            """;
    }

    private static Answer Page(
        IReadOnlyList<AnswerColumn> columns, List<(Guid Id, AnswerRow Row)> rows, int limit, Func<(Guid Id, AnswerRow Row), PageMark> mark, NotRanked notRanked, int total)
    {
        var page = rows.Take(limit).ToList();
        return new Answer(columns, [.. page.Select(row => row.Row)], notRanked, rows.Count > limit ? mark(page[^1]).ToString() : null, total);
    }

    private static async Task<int> CountAsync(NpgsqlConnection connection, Sql sql, string text, CancellationToken cancellationToken) =>
        (int)(await ReadAsync(connection, sql, text, reader => reader.GetInt64(0), cancellationToken))[0];

    private static Task<List<T>> ReadAsync<T>(NpgsqlConnection connection, Sql sql, string text, Func<NpgsqlDataReader, T> read, CancellationToken cancellationToken) =>
        connection.ReadAsync(text, sql.Parameters, read, cancellationToken);

    private sealed class Sql
    {
        public List<NpgsqlParameter> Parameters { get; } = [];

        public string Add(object value)
        {
            Parameters.Add(value is DateTimeOffset moment
                ? new NpgsqlParameter { Value = moment.ToUniversalTime(), NpgsqlDbType = NpgsqlDbType.TimestampTz }
                : new NpgsqlParameter { Value = value });
            return $"${Parameters.Count}";
        }
    }
}
