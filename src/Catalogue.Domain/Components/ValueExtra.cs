using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Components;

/// <summary>What stood beside the value of a part.</summary>
/// <param name="Name">
/// <c>voltage power current tol dielectric class package elements dcr isat_or_irms vds id rds_on vr vz if trr load beta</c>, or the code of the
/// unit where nothing more is known.
/// </param>
/// <param name="Text">As a person reads it, such as <c>275 V AC</c>, <c>X7R</c>, <c>1%</c>.</param>
/// <param name="Quantity">The quantity, or null for a word or a tolerance.</param>
/// <param name="Condition">The condition it was given at, such as <c>vgs=10 V</c>, or null.</param>
/// <param name="IsFromDescription">True where it was taken from the free description.</param>
public sealed record ValueExtra(string Name, string Text, Quantity? Quantity = null, string? Condition = null, bool IsFromDescription = false);
