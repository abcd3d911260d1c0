using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Isolation;

/// <summary>A measured shortest path between two conductors.</summary>
/// <param name="Kind">Creepage or clearance; null where not said.</param>
/// <param name="Length">With the uncertainty of the measurement, in metre; null where not measured.</param>
/// <param name="Method">How it was measured, such as <c>caliper</c>.</param>
/// <param name="From">One end.</param>
/// <param name="To">The other end.</param>
/// <param name="NarrowestGroove">Width of the narrowest slot or groove that the path follows, in metre; null where it follows none.</param>
public sealed record IsolationPath(PathKind? Kind, Interval? Length, string? Method, string? From, string? To, double? NarrowestGroove = null);
