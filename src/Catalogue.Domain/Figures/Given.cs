using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Figures;

/// <summary>A known input of a figure.</summary>
/// <param name="Interval">Its three cases, in the unit the input's name says.</param>
/// <param name="Evidence">How it is known.</param>
/// <param name="Source">Where it was found, or null where not stated.</param>
public sealed record Given(Interval Interval, Evidence Evidence, string? Source);
