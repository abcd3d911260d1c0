using Catalogue.Domain.Figures;

namespace Catalogue.Site.Figures;

/// <summary>How one kind of figure is spoken of.</summary>
/// <param name="Title">Its name.</param>
/// <param name="Caption">What is divided by what, and which way is better.</param>
/// <param name="MoreIsBetter">True when larger is safer, false when smaller is, null for a fact that is neither.</param>
/// <param name="Beside">What stands beside the number, by symbol: a word and the step or input it comes from.</param>
public sealed record FigureWords(string Title, string Caption, bool? MoreIsBetter, IReadOnlyList<(string Word, string Symbol)> Beside)
{
    /// <summary>The words for a rule. A rule that is no longer there is called by its code.</summary>
    public static FigureWords For(string rule)
    {
        ArgumentException.ThrowIfNullOrEmpty(rule);
        return FigureRules.Find(rule) is { } known
            ? new FigureWords(known.Title, known.Caption, known.MoreIsBetter, known.Beside)
            : new FigureWords(char.ToUpperInvariant(rule[0]) + rule[1..].Replace('_', ' '), "", null, []);
    }
}
