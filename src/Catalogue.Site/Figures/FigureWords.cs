using Catalogue.Domain.Figures;

namespace Catalogue.Site.Figures;

/// <summary>How one kind of figure is spoken of.</summary>
/// <param name="Title">Its name.</param>
/// <param name="Caption">What is divided by what, and which way is better.</param>
/// <param name="Line">The line it is held against, or null where each figure has its own.</param>
/// <param name="MoreIsBetter">True when larger is safer.</param>
/// <param name="Beside">What stands beside the number, by symbol: a word and the step or input it comes from.</param>
public sealed record FigureWords(string Title, string Caption, double? Line, bool MoreIsBetter, IReadOnlyList<(string Word, string Symbol)> Beside)
{
    /// <summary>The words for a rule. A rule without words of its own is called by its code.</summary>
    public static FigureWords For(string rule)
    {
        ArgumentException.ThrowIfNullOrEmpty(rule);
        return rule == FuseHeadroom.Rule
            ? new FigureWords("Fuse headroom", "current allowed ÷ current needed: more is better", VerdictLines.Headroom, true, [("allowed", "I_allowed"), ("needed", "I_needed"), ("rated", "I_rated")])
            : new FigureWords(char.ToUpperInvariant(rule[0]) + rule[1..].Replace('_', ' '), "", null, true, []);
    }
}
