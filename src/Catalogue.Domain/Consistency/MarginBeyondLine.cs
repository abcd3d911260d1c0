using Catalogue.Domain.Figures;

namespace Catalogue.Domain.Consistency;

/// <summary>A figure beyond its line: what the part sees against what it may bear. Screening, not a verdict on the product.</summary>
internal static class MarginBeyondLine
{
    public static IEnumerable<Contradiction> Find(ConsistencyFacts facts)
    {
        var parts = facts.Facts.Components.ToDictionary(component => component.Id);
        foreach (var figure in facts.Figures)
        {
            if (figure is not { Verdict: Verdict.OverRating or Verdict.OverGuideline, ComponentId: { } id } || !parts.TryGetValue(id, out var part) || FigureRules.Find(figure.Rule) is not { } rule)
                continue;
            yield return new Contradiction(
                "margin_beyond_line",
                figure.Verdict is Verdict.OverRating ? ContradictionSeverity.Contradiction : ContradictionSeverity.LookAgain,
                $"{part.Name}: {rule.Title.ToLowerInvariant()} is {figure.Verdict.Word()}.",
                new StatedFact(rule.Title, Quantities.QuantityText.Of(figure.Nominal!.Value, figure.Unit, 3), null, id.Value),
                new StatedFact("held against", figure.Working.Lines.Count > 0 ? figure.Working.Lines[0] : "its line", null, null));
        }
    }
}
