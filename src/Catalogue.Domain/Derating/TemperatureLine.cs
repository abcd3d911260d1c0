namespace Catalogue.Domain.Derating;

/// <summary>A factor that falls along a straight line with temperature.</summary>
/// <param name="FromDegC">Up to here the guideline's own factor holds.</param>
/// <param name="ToDegC">Here the line ends; beyond it there is no guideline.</param>
/// <param name="FactorAtEnd">The factor there.</param>
public sealed record TemperatureLine(double FromDegC, double ToDegC, double FactorAtEnd);
