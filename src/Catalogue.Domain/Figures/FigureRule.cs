using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Figures;

/// <summary>One kind of figure: how it is called, what it measures, what it is computed for.</summary>
/// <param name="Code">Its lasting code.</param>
/// <param name="Version">The version of the rule.</param>
/// <param name="Title">Its name.</param>
/// <param name="Caption">What is divided by what, and which way is better.</param>
/// <param name="Unit">The unit of its value.</param>
/// <param name="MoreIsBetter">True when larger is safer, false when smaller is, null for a fact that is neither.</param>
/// <param name="Beside">What stands beside the number, by symbol: a word and the step or input it comes from.</param>
public sealed record FigureRule(
    string Code, int Version, string Title, string Caption, Unit Unit, bool? MoreIsBetter, IReadOnlyList<(string Word, string Symbol)> Beside)
{
    /// <summary>Computes it for a part, or gives null where it does not apply; null for a figure of a rail.</summary>
    internal Func<PartFacts, LineTable, FigureResult?>? OfPart { get; init; }

    /// <summary>Computes it for a rail, or gives null where it does not apply; null for a figure of a part.</summary>
    internal Func<RailFacts, FigureResult?>? OfRail { get; init; }

    /// <summary>True for a figure of a part.</summary>
    public bool IsOfPart => OfPart is not null;

    /// <summary>True when parts can be ranked by it: it is of a part and held against lines.</summary>
    public bool Ranks => OfPart is not null && MoreIsBetter is not null;
}
