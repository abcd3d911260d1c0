using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Figures;

/// <summary>One input of a working, as a reader needs it to redo the sum.</summary>
/// <param name="Symbol">The symbol in the formula.</param>
/// <param name="Name">What it is.</param>
/// <param name="Low">The lowest case.</param>
/// <param name="Nominal">The value.</param>
/// <param name="High">The highest case.</param>
/// <param name="Unit">The unit of all three.</param>
/// <param name="Evidence">How it is known; null for a house rule or a convention, which <paramref name="Source"/> names.</param>
/// <param name="Source">Where it was found, or null where not stated.</param>
public sealed record WorkingInput(string Symbol, string Name, double Low, double Nominal, double High, Unit Unit, Evidence? Evidence, string? Source);
