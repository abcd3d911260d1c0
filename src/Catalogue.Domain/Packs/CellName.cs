using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Packs;

/// <summary>What the name printed on a cell or battery says.</summary>
/// <param name="Series">Cells in series, from 1; null where the name does not say.</param>
/// <param name="Negative">The negative electrode, or null where the name does not say.</param>
/// <param name="Positive">The positive electrode, or null where the name does not say.</param>
/// <param name="Shape">The shape.</param>
/// <param name="DiameterOrThickness">In metre. Designations of IEC 61960-3 are rounded up to whole millimetres.</param>
/// <param name="Width">In metre; null for a cylindrical cell.</param>
/// <param name="Height">In metre, by the rule of the code.</param>
/// <param name="OtherHeight">In metre: what trade use may mean instead; null where rule and use agree.</param>
/// <param name="Parallel">Cells in parallel, from 1.</param>
/// <param name="Mark">How well the reading is founded.</param>
/// <param name="Warnings">What to check, in words; may be empty.</param>
public sealed record CellName(
    int? Series,
    NegativeElectrode? Negative,
    PositiveElectrode? Positive,
    CellShape Shape,
    double DiameterOrThickness,
    double? Width,
    double Height,
    double? OtherHeight,
    int Parallel,
    Confidence Mark,
    IReadOnlyList<string> Warnings);
