using Catalogue.Domain.Components;

namespace Catalogue.Testing.Identification;

/// <summary>A part family that no maker makes, for measuring identification.</summary>
/// <param name="Number">Its base number as it would be printed.</param>
/// <param name="Scheme">Which naming scheme it comes from, from 0.</param>
/// <param name="Maker">Its maker.</param>
/// <param name="Package">The outline it comes in, by its canonical name.</param>
/// <param name="FunctionClass">What it does.</param>
public sealed record InventedFamily(string Number, int Scheme, string Maker, string Package, FunctionClass FunctionClass);
