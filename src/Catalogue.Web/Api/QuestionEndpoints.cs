using System.Diagnostics;
using System.Globalization;
using System.Text;
using Catalogue.Data.Questions;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Products;
using Catalogue.Domain.Questions;
using Catalogue.Domain.Text;
using Microsoft.AspNetCore.Mvc;

namespace Catalogue.Web.Api;

/// <summary>Questions over the published teardowns.</summary>
internal static class QuestionEndpoints
{
    /// <summary>A ready-made question.</summary>
    public sealed record QuestionItem(string Slug, string Title, string Description, IReadOnlyList<ParameterItem> Parameters, string AnswerUrl);

    /// <summary>A parameter with an example that gives rows; null while nothing is published.</summary>
    public sealed record ParameterItem(string Name, string Type, bool Required, string? Example);

    /// <summary>An answer.</summary>
    public sealed record AnswerJson(IReadOnlyList<AnswerColumn> Columns, IReadOnlyList<AnswerRow> Rows, NotRanked NotRanked, int Total, string? Next, double TookMs);

    public static void MapQuestions(this RouteGroupBuilder api)
    {
        var questions = api.MapGroup("").AllowAnonymous().WithTags("questions");
        questions.MapGet("questions", ListAsync).WithSummary("The ready-made questions.").Produces<TeardownEndpoints.List<QuestionItem>>();
        questions.MapGet("questions/{slug}/answer", AnswerAsync).WithSummary("Answers a ready-made question; format=csv gives CSV.").Produces<AnswerJson>();
        questions.MapPost("ask", AskAsync).WithSummary("Answers a question tree.").Produces<AnswerJson>();
    }

    private static async Task<IResult> ListAsync(ReadyQuestionsQuery query, CancellationToken cancel) =>
        TypedResults.Ok(new TeardownEndpoints.List<QuestionItem>(
            [
                .. (await query.RunAsync(cancel)).Select(row => new QuestionItem(
                    row.Question.Slug,
                    row.Question.Title,
                    row.Question.Description,
                    [.. row.Question.Parameters.Select(parameter => new ParameterItem(parameter.Name, parameter.Type, parameter.Required, row.Examples[parameter.Name]))],
                    $"/api/v1/questions/{row.Question.Slug}/answer")),
            ],
            null));

    private static async Task<IResult> AnswerAsync(
        string slug,
        HttpContext http,
        AskQuery ask,
        CancellationToken cancel,
        [FromQuery] string? family = null,
        [FromQuery] string? category = null,
        [FromQuery] string? after = null,
        [FromQuery] int limit = 50,
        [FromQuery] string format = "json")
    {
        if (ReadyQuestions.Find(slug) is not { } ready)
            return ApiProblem.Of(StatusCodes.Status404NotFound, $"There is no question “{slug}”; GET /api/v1/questions lists them.");
        if (format is not ("json" or "csv"))
            return ApiProblem.Of(StatusCodes.Status400BadRequest, $"format is json or csv; it was “{format}”.", "format");
        if (category is not null && SnakeCase.TryParse<ProductCategory>(category) is null)
            return ApiProblem.Of(StatusCodes.Status400BadRequest, $"category is one of {string.Join(", ", SnakeCase.All<ProductCategory>())}; it was “{category}”.", "category");
        var values = new Dictionary<string, string>();
        foreach (var (name, value) in new[] { ("family", family), ("category", category) })
            if (!string.IsNullOrWhiteSpace(value))
                values[name] = value;
        if (ready.Parameters.FirstOrDefault(parameter => parameter.Required && !values.ContainsKey(parameter.Name)) is { } missing)
            return ApiProblem.Of(StatusCodes.Status400BadRequest, $"The question needs {missing.Name}, a {missing.Type}: .../answer?{missing.Name}=...", missing.Name);
        return await GiveAsync(ready.Build(values) with { After = after, Limit = limit }, http, ask, format, cancel);
    }

    private static Task<IResult> AskAsync([FromBody] Question question, HttpContext http, AskQuery ask, CancellationToken cancel) => GiveAsync(question, http, ask, "json", cancel);

    private static async Task<IResult> GiveAsync(Question question, HttpContext http, AskQuery ask, string format, CancellationToken cancel)
    {
        var began = Stopwatch.GetTimestamp();
        var outcome = await ask.RunAsync(question, cancel);
        var took = Math.Round(Stopwatch.GetElapsedTime(began).TotalMilliseconds, 2);
        if (outcome is not ChangeOutcome<Answer>.Done { Value: var answer })
            return outcome.ToResult(_ => TypedResults.Ok());
        if (format == "csv")
            return TypedResults.File(await CsvAsync(answer), "text/csv; charset=utf-8", "answer.csv");
        // A question that came as a tree is asked again with the mark; one with an address gives the address.
        var next = HttpMethods.IsPost(http.Request.Method) ? answer.Next : ListQuestions.Next(http.Request, answer.Next);
        return TypedResults.Ok(new AnswerJson(answer.Columns, answer.Rows, answer.NotRanked, answer.Total, next, took));
    }

    private static async Task<byte[]> CsvAsync(Answer answer)
    {
        using var text = new StringWriter(CultureInfo.InvariantCulture);
        await using (var csv = ComponentsCsv.Open(text))
        {
            await csv.WriteRecordAsync([.. answer.Columns.Select(column => column.Unit is { } ? column.Name + "_ratio" : column.Name), "teardown"]);
            foreach (var row in answer.Rows)
                await csv.WriteRecordAsync([.. answer.Columns.Select(column => Cell(row, column.Name) ?? ""), row.Teardown]);
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }

    private static string? Cell(AnswerRow row, string column) => column switch
    {
        "rank" => row.Rank?.ToString(CultureInfo.InvariantCulture),
        "product" => row.Product,
        "category" => SnakeCase.Code(row.Category),
        "family" => row.Family,
        "components" => row.Components?.ToString(CultureInfo.InvariantCulture),
        "published_at" => row.PublishedAt.ToString("O", CultureInfo.InvariantCulture),
        "board" => row.Board,
        "component_name" => row.ComponentName,
        "low" => row.Low?.ToString("R", CultureInfo.InvariantCulture),
        "nominal" => row.Nominal?.ToString("R", CultureInfo.InvariantCulture),
        "high" => row.High?.ToString("R", CultureInfo.InvariantCulture),
        "verdict" => row.Verdict is { } verdict ? SnakeCase.Code(verdict) : null,
        _ => throw new InvalidOperationException($"The column {column} has no cell."),
    };
}
