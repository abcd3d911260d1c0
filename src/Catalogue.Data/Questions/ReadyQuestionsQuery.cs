using Catalogue.Domain.Questions;
using Npgsql;

namespace Catalogue.Data.Questions;

/// <summary>Lists the ready-made questions with an example for each parameter, taken from stored data so that it gives rows.</summary>
/// <param name="source">The data source.</param>
public sealed class ReadyQuestionsQuery(NpgsqlDataSource source)
{
    /// <summary>A question with its examples.</summary>
    /// <param name="Question">The question.</param>
    /// <param name="Examples">An example for each parameter by name; null where nothing is published yet.</param>
    public sealed record Row(ReadyQuestion Question, IReadOnlyDictionary<string, string?> Examples);

    /// <summary>All of them.</summary>
    public async Task<IReadOnlyList<Row>> RunAsync(CancellationToken cancellationToken = default)
    {
        // The family that most published designs use, controllers and other chips before passives: designators tell them apart.
        var family = await ScalarAsync(
            """
            select f.slug from family_links l
            join components c on c.revision_id = l.revision_id and c.id = l.component_id
            join revisions r on r.id = c.revision_id and r.state = 'published'
            join families f on f.id = l.family_id
            group by 1
            order by bool_or(c.function_class in ('controller', 'regulator', 'protocol_chip', 'cell_protection') or c.designators ~ '^(U|IC)\d') desc, count(distinct r.id) desc, 1
            limit 1
            """,
            cancellationToken);
        var ranked = await ScalarAsync(
            "select r.category from current_figures g join revisions r on r.id = g.revision_id and r.state = 'published' where g.low is not null group by 1 order by count(*) desc, 1 limit 1",
            cancellationToken);
        var category = family is null
            ? null
            : await ScalarAsync(
                """
                select r.category from family_links l join revisions r on r.id = l.revision_id and r.state = 'published'
                join families f on f.id = l.family_id
                where f.slug = $1 group by 1 order by count(*) desc, 1 limit 1
                """,
                cancellationToken,
                family);
        return
        [
            .. ReadyQuestions.All.Select(question => new Row(
                question,
                question.Parameters.ToDictionary(
                    parameter => parameter.Name,
                    parameter => parameter.Type == "family" ? family : question.Parameters.Any(other => other.Type == "family") ? category : ranked))),
        ];
    }

    private async Task<string?> ScalarAsync(string sql, CancellationToken cancellationToken, params string[] values)
    {
        await using var command = source.CreateCommand(sql);
        foreach (var value in values)
            command.Parameters.Add(new NpgsqlParameter { Value = value });
        return await command.ExecuteScalarAsync(cancellationToken) as string;
    }
}
