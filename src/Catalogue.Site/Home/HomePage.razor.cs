using Catalogue.Data.Publishing;
using Catalogue.Data.Questions;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Publishing;
using Catalogue.Site.Layout;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Http;

namespace Catalogue.Site.Home;

public sealed partial class HomePage(SiteCountsQuery siteCounts, TeardownsQuery teardowns, ReadyQuestionsQuery questions, AskQuery ask)
{
    private readonly Dictionary<string, Answer> _answers = [];

    private SiteCountsQuery.Counts? _counts;
    private IReadOnlyList<TeardownListItem>? _latest;
    private IReadOnlyList<ReadyQuestionsQuery.Row> _questions = [];
    private List<(string Words, bool IsNumber)> _tries = [];

    [CascadingParameter]
    public HttpContext? Http { get; set; }

    protected override async Task OnInitializedAsync()
    {
        var cancelled = Http?.RequestAborted ?? default;
        var counts = await siteCounts.RunAsync(cancelled);
        var latest = (await teardowns.PublishedAsync(new TeardownsQuery.Request { Limit = 6 }, cancelled)).Items;
        if (counts.Teardowns > 0)
        {
            _questions = await questions.RunAsync(cancelled);
            foreach (var row in _questions.Where(IsComplete))
            {
                var values = row.Question.Parameters.Where(parameter => parameter.Required).ToDictionary(parameter => parameter.Name, parameter => row.Examples[parameter.Name]!);
                if (await ask.RunAsync(row.Question.Build(values) with { Limit = 3 }, cancelled) is ChangeOutcome<Answer>.Done { Value: var answer })
                    _answers[row.Question.Slug] = answer;
            }

            _tries =
            [
                .. _questions.SelectMany(row => row.Question.Parameters.Where(parameter => parameter.Type == "family").Select(parameter => row.Examples[parameter.Name])).OfType<string>().Distinct().Take(1).Select(family => (family, true)),
                .. latest.Select(item => item.Brand).Distinct().Take(2).Select(brand => (brand, false)),
            ];
        }

        _latest = latest;
        _counts = counts;
    }

    private static bool IsComplete(ReadyQuestionsQuery.Row row) => row.Question.Parameters.All(parameter => !parameter.Required || row.Examples[parameter.Name] is not null);

    private static string QuestionAddress(ReadyQuestionsQuery.Row row) =>
        row.Question.Parameters.FirstOrDefault(parameter => parameter.Required) is { } parameter && row.Examples[parameter.Name] is { } example
            ? Addresses.Question(row.Question.Slug, parameter.Name, example)
            : Addresses.Question(row.Question.Slug);

    private static string Opening(SiteCountsQuery.Counts counts)
    {
        var kinds = WordsFor.List([.. counts.ByCategory.OrderBy(pair => pair.Key).Select(pair => Teardowns.CategoryPlurals.Plural(pair.Key))]);
        var figures = counts.Computed == 0 ? "" : $", {WordsFor.Count(counts.Computed, "figure")} with their working";
        var unknown = counts.Unknown == 0 ? "" : counts.Computed == 0
            ? $" {WordsFor.Count(counts.Unknown, "figure")} could not be computed, and {(counts.Unknown == 1 ? "says" : "say")} what is missing."
            : $" {WordsFor.Number(counts.Unknown)} more could not be computed, and {(counts.Unknown == 1 ? "says" : "say")} what is missing.";
        return $"{WordsFor.Count(counts.Teardowns, "published teardown")} of {kinds}: {WordsFor.Count(counts.Components, "component")}, {WordsFor.Count(counts.Families, "part family", "part families")}{figures}.{unknown}";
    }
}
