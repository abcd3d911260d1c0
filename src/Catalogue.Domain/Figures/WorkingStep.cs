using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Figures;

/// <summary>One line of a working: a quantity, how it comes about, and its three cases.</summary>
/// <param name="Symbol">The quantity's symbol.</param>
/// <param name="Name">What it is.</param>
/// <param name="Formula">The formula in symbols.</param>
/// <param name="InNumbers">The formula with the nominal numbers put in.</param>
/// <param name="Worst">The formula with the numbers of the worst case put in.</param>
/// <param name="Low">The lowest case.</param>
/// <param name="Nominal">The value.</param>
/// <param name="High">The highest case.</param>
/// <param name="Unit">The unit of all three.</param>
public sealed record WorkingStep(
    string Symbol, string Name, string Formula, string InNumbers, string Worst, double Low, double Nominal, double High, Unit Unit);
