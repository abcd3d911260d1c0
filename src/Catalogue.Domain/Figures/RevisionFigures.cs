using Catalogue.Domain.Teardowns;

namespace Catalogue.Domain.Figures;

/// <summary>Computes every figure of a revision from its facts.</summary>
public static class RevisionFigures
{
    /// <summary>
    /// One figure for each rule and each part or rail it applies to: by part in the order of the components, then by rail; those that lack an
    /// input come as unknown. Places left empty have none.
    /// </summary>
    public static IReadOnlyList<Figure> Compute(RevisionId revision, RevisionFacts facts, LineTable lines)
    {
        ArgumentNullException.ThrowIfNull(facts);
        ArgumentNullException.ThrowIfNull(lines);
        var (rails, parts) = facts.Arrange();
        var figures = new List<Figure>();
        foreach (var part in parts)
            foreach (var rule in FigureRules.All)
                if (rule.OfPart?.Invoke(part, lines) is { } result)
                    figures.Add(Figure.Of(revision, part.Component.Id, null, rule, result));
        foreach (var rail in rails)
            foreach (var rule in FigureRules.All)
                if (rule.OfRail?.Invoke(rail) is { } result)
                    figures.Add(Figure.Of(revision, null, rail.Rail.Id, rule, result));
        return figures;
    }
}
