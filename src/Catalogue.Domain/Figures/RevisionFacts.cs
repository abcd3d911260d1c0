using Catalogue.Domain.Components;
using Catalogue.Domain.Rails;

namespace Catalogue.Domain.Figures;

/// <summary>The facts of one revision that figures are computed from.</summary>
/// <param name="Components">All components.</param>
/// <param name="Ratings">All ratings.</param>
/// <param name="Rails">All rails.</param>
/// <param name="RailQuantities">All that is known of the rails.</param>
public sealed record RevisionFacts(
    IReadOnlyList<BoardComponent> Components,
    IReadOnlyList<Rating> Ratings,
    IReadOnlyList<Rail> Rails,
    IReadOnlyList<RailQuantity> RailQuantities);
