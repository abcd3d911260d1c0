using Catalogue.Domain.Figures;
using Catalogue.Domain.Products;
using Catalogue.Domain.Text;

namespace Catalogue.Domain.Questions;

/// <summary>The questions that ship with the catalogue.</summary>
public static class ReadyQuestions
{
    private static readonly QuestionParameter Category = new("category", "category", false, "Only this category");

    /// <summary>All of them, in the order they are listed.</summary>
    public static IReadOnlyList<ReadyQuestion> All { get; } =
    [
        new(
            "designs-using-family",
            "Which designs use a given part family?",
            "One row a published teardown in which a component was resolved to the family, newest first.",
            [new QuestionParameter("family", "family", true, "Part family"), Category],
            values => new Question
            {
                Subject = QuestionSubject.Designs,
                Has = [new QuestionCondition { Family = values["family"] }],
                Category = CategoryOf(values),
            }),
        new(
            "thinnest-fuse-headroom",
            "Whose fuse headroom is thinnest?",
            "Fuses of published teardowns, ranked by the low end of allowed over needed current. What could not be computed is counted, not ranked.",
            [Category],
            values => new Question
            {
                Subject = QuestionSubject.Components,
                RankBy = new QuestionRank { Figure = FuseHeadroom.Rule },
                Category = CategoryOf(values),
            }),
    ];

    /// <summary>The question at an address, or null.</summary>
    public static ReadyQuestion? Find(string slug) => All.FirstOrDefault(question => question.Slug == slug);

    private static ProductCategory? CategoryOf(IReadOnlyDictionary<string, string> values) =>
        values.TryGetValue("category", out var text) ? SnakeCase.TryParse<ProductCategory>(text) : null;
}
