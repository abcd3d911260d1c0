using Catalogue.Data.Families;
using Catalogue.Data.Questions;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Products;
using Catalogue.Domain.Publishing;
using Catalogue.Domain.Questions;
using Catalogue.Domain.Text;
using Catalogue.Site.Layout;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.WebUtilities;

namespace Catalogue.Site.Questions;

public sealed partial class AnswerPage(AskQuery ask, FamiliesQuery families)
{
    private const int MostOffered = 12;

    private ReadyQuestion? _question;
    private Answer? _answer;
    private string? _refusal;
    private IReadOnlyList<FamiliesQuery.Row> _families = [];
    private List<FamiliesQuery.Row> _offered = [];

    [Parameter]
    public string Slug { get; set; } = "";

    [SupplyParameterFromQuery]
    public string? Family { get; set; }

    [SupplyParameterFromQuery]
    public string? Category { get; set; }

    [SupplyParameterFromQuery]
    public string? After { get; set; }

    [CascadingParameter]
    public HttpContext? HttpContext { get; set; }

    private string? NextHref => _answer?.Next is { } mark ? QueryHelpers.AddQueryString(Address(Addresses.Question(Slug)), "after", mark) : null;

    private string DataHref(string format) =>
        QueryHelpers.AddQueryString(Address(Addresses.AnswerData(Slug)), new Dictionary<string, string?> { ["format"] = format, ["limit"] = $"{Question.MaxLimit}" });

    private string Address(string path) =>
        QueryHelpers.AddQueryString(path, Values().ToDictionary(pair => pair.Key, pair => (string?)pair.Value));

    protected override async Task OnInitializedAsync()
    {
        var cancelled = HttpContext?.RequestAborted ?? CancellationToken.None;
        _question = ReadyQuestions.Find(Slug);
        if (_question is null)
        {
            Answered(StatusCodes.Status404NotFound);
            return;
        }

        var asksForFamily = _question.Parameters.Any(parameter => parameter.Type == "family");
        if (asksForFamily)
            _families = (await families.RunAsync(null, null, 200, seesDrafts: false, cancelled)).Items;
        await AskAsync(_question, cancelled);
        if (asksForFamily && (_answer is null || _answer.Total == 0))
            _offered = [.. _families.OrderByDescending(family => family.Designs).ThenBy(family => family.Name, StringComparer.Ordinal).Take(MostOffered)];
    }

    private async Task AskAsync(ReadyQuestion question, CancellationToken cancelled)
    {
        if (!string.IsNullOrWhiteSpace(Category) && SnakeCase.TryParse<ProductCategory>(Category) is null)
        {
            _refusal = $"“{Category}” is no category. Choose one of the list above: {string.Join(", ", Enum.GetValues<ProductCategory>().Select(CategoryText.Plural))}.";
            Answered(StatusCodes.Status400BadRequest);
            return;
        }

        var values = Values();
        if (question.Parameters.FirstOrDefault(parameter => parameter.Required && !values.ContainsKey(parameter.Name)) is { } missing)
        {
            _refusal = missing.Type == "family" ? "Name a part family above: its number as the catalogue writes it." : $"Give {missing.Words} above.";
            return;
        }

        switch (await ask.RunAsync(question.Build(values) with { After = string.IsNullOrEmpty(After) ? null : After }, cancelled))
        {
            case ChangeOutcome<Answer>.Done { Value: { Total: 0 } nothing } when values.TryGetValue("family", out var family) && _families.All(row => row.Slug != family) && nothing.Rows.Count == 0:
                _refusal = $"No published teardown uses a part family “{family}”{(values.ContainsKey("category") ? " in this category" : "")}. It may be written another way here.";
                break;
            case ChangeOutcome<Answer>.Done { Value: var answer }:
                _answer = answer;
                break;
            case ChangeOutcome<Answer>.Refused { Reason: var reason }:
                _refusal = reason;
                Answered(StatusCodes.Status400BadRequest);
                break;
            default:
                _refusal = "The question cannot be asked.";
                Answered(StatusCodes.Status400BadRequest);
                break;
        }
    }

    // Only parameters that the question has, and only those that are given. People write numbers with capitals; addresses have none.
    private Dictionary<string, string> Values()
    {
        var values = new Dictionary<string, string>();
        foreach (var (name, value) in new[] { ("family", Family?.Trim().ToLowerInvariant()), ("category", Category?.Trim()) })
            if (!string.IsNullOrEmpty(value) && _question?.Parameters.Any(parameter => parameter.Name == name) == true)
                values[name] = value;
        return values;
    }

    // Nothing has been sent yet: public pages do not stream.
    private void Answered(int status)
    {
        if (HttpContext is { } context)
            context.AnswerWith(status);
    }
}
