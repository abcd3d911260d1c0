using System.ComponentModel;
using Catalogue.Domain.Figures;

namespace Catalogue.Domain.Questions;

/// <summary>What an answer is ranked by.</summary>
public sealed record QuestionRank
{
    /// <summary>The figures that can rank.</summary>
    public static IReadOnlyList<string> Figures { get; } = [.. FigureRules.All.Where(rule => rule.Ranks && rule.MoreIsBetter is true).Select(rule => rule.Code)];

    /// <summary>The figure's rule.</summary>
    [Description("The rule of the figure, such as fuse_headroom.")]
    public required string Figure { get; init; }

    /// <summary>Which case decides; the lowest unless the reader chooses otherwise.</summary>
    [Description("Which case decides: low (the worst case, the default) or nominal.")]
    public RankCase By { get; init; }
}
