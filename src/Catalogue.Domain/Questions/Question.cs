using System.ComponentModel;
using Catalogue.Domain.Products;

namespace Catalogue.Domain.Questions;

/// <summary>A typed query over the catalogue: a subject, conditions, a rank and a limit. Its JSON form is stable.</summary>
[Description("A question over the published teardowns.")]
public sealed record Question
{
    /// <summary>The most rows of one answer page.</summary>
    public const int MaxLimit = 500;

    /// <summary>What a row is.</summary>
    [Description("What a row of the answer is: designs (one row a published teardown) or components.")]
    public required QuestionSubject Subject { get; init; }

    /// <summary>Conditions that a design must meet, each of them.</summary>
    [Description("Conditions that must all hold. For designs: has a component of the family. For components: is of the family.")]
    public IReadOnlyList<QuestionCondition> Has { get; init; } = [];

    /// <summary>Only products of one category, or null for all.</summary>
    [Description("Only products of this category.")]
    public ProductCategory? Category { get; init; }

    /// <summary>What the rows are ranked by, or null for the newest publication first.</summary>
    [Description("Ranks components by a figure. Unknown figures are never ranked; they are counted under not_ranked.")]
    public QuestionRank? RankBy { get; init; }

    /// <summary>Rows a page, 1 to <see cref="MaxLimit"/>.</summary>
    [Description("Rows a page, 1 to 500.")]
    public int Limit { get; init; } = 50;

    /// <summary>The mark of the last row already seen, as the previous answer gave it, or null.</summary>
    [Description("The mark that the previous page gave under next.")]
    public string? After { get; init; }

    /// <summary>Why the question cannot be asked, or null when it can.</summary>
    public string? Refuse()
    {
        if (Limit is < 1 or > MaxLimit)
            return $"limit is 1 to {MaxLimit}; it was {Limit}.";
        if (Has.Count > 8)
            return $"has takes at most 8 conditions; there were {Has.Count}.";
        if (Has.Any(condition => condition is null || string.IsNullOrWhiteSpace(condition.Family) || condition.Family.Any(char.IsControl)))
            return "Each condition under has names a family by its slug, such as {\"family\": \"qlx4n30d\"}.";
        if (RankBy is { } rank && !QuestionRank.Figures.Contains(rank.Figure))
            return $"rank_by.figure is one of {string.Join(", ", QuestionRank.Figures)}; it was “{rank.Figure}”.";
        if (RankBy is not null && Subject is QuestionSubject.Designs)
            return "Designs are ranked by nothing yet; ask for the subject components to rank by a figure.";
        if (RankBy is null && Subject is QuestionSubject.Components && Has.Count == 0)
            return "A question for components needs a rank_by or a family under has.";
        return null;
    }
}
