using Catalogue.Data.Questions;
using Catalogue.Domain.Products;
using Catalogue.Domain.Publishing;
using Catalogue.Domain.Text;

namespace Catalogue.Site.Questions;

public sealed partial class AskPage(ReadyQuestionsQuery questions)
{
    private IReadOnlyList<ReadyQuestionsQuery.Row> _questions = [];

    protected override async Task OnInitializedAsync() => _questions = await questions.RunAsync();

    // The required parameter, else the first for which stored data gives a value that has rows.
    private static (string Href, string Words)? Example(ReadyQuestionsQuery.Row row)
    {
        var parameter = row.Question.Parameters.OrderByDescending(parameter => parameter.Required).FirstOrDefault(parameter => row.Examples.GetValueOrDefault(parameter.Name) is not null);
        if (parameter is null || row.Examples[parameter.Name] is not { } value)
            return null;
        var words = parameter.Type == "category" && SnakeCase.TryParse<ProductCategory>(value) is { } category ? $"only {CategoryText.Plural(category)}" : $"{parameter.Name} {value}";
        return (Addresses.Question(row.Question.Slug, parameter.Name, value), words);
    }
}
