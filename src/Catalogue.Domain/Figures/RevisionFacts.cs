using Catalogue.Domain.BenchLogs;
using Catalogue.Domain.Components;
using Catalogue.Domain.Isolation;
using Catalogue.Domain.Products;
using Catalogue.Domain.Rails;

namespace Catalogue.Domain.Figures;

/// <summary>The facts of one revision that figures are computed from.</summary>
/// <param name="Components">All components.</param>
/// <param name="Ratings">All ratings.</param>
/// <param name="Rails">All rails.</param>
/// <param name="RailQuantities">All that is recorded of the rails.</param>
public sealed record RevisionFacts(
    IReadOnlyList<BoardComponent> Components,
    IReadOnlyList<Rating> Ratings,
    IReadOnlyList<Rail> Rails,
    IReadOnlyList<RailQuantity> RailQuantities)
{
    /// <summary>All ports; a rail that is a port's takes what the port offers.</summary>
    public IReadOnlyList<Port> Ports { get; init; } = [];

    /// <summary>All bench tests; cautions look for hot surfaces.</summary>
    public IReadOnlyList<BenchTest> Tests { get; init; } = [];

    /// <summary>All measured isolation paths; cautions look for those across a barrier.</summary>
    public IReadOnlyList<MeasuredPath> IsolationPaths { get; init; } = [];

    /// <summary>The cells' chemistry as recorded, or null.</summary>
    public string? CellChemistry { get; init; }

    /// <summary>Every rail with what is recorded, what is derived where nothing is, and the fitted parts on it; in the order of the rails.</summary>
    public IReadOnlyList<RailFacts> ByRail() => Arrange().Rails;

    /// <summary>Rails and fitted parts, each with all that the rules may take of it.</summary>
    internal (IReadOnlyList<RailFacts> Rails, IReadOnlyList<PartFacts> Parts) Arrange()
    {
        var ratings = Ratings.ToLookup(rating => rating.ComponentId);
        var recorded = RailQuantities.ToLookup(quantity => quantity.RailId);
        var rails = new List<RailFacts>(Rails.Count);
        foreach (var rail in Rails)
        {
            var quantities = recorded[rail.Id].ToDictionary(quantity => quantity.Kind, quantity => new Given(quantity.Interval, quantity.Evidence, Said(quantity.Source, rail)));
            foreach (var (kind, given) in DerivedRails.For(rail, this, ratings))
                quantities.TryAdd(kind, given);
            rails.Add(new RailFacts(rail, quantities));
        }

        var byId = rails.ToDictionary(rail => rail.Rail.Id);
        var parts = new List<PartFacts>(Components.Count);
        foreach (var component in Components)
            if (component.IsFitted)
                parts.Add(new PartFacts(component, [.. ratings[component.Id]], component.RailId is { } id ? byId.GetValueOrDefault(id) : null, CellChemistry));
        foreach (var onRail in parts.Where(part => part.Rail is not null).GroupBy(part => part.Rail!))
            onRail.Key.Parts = [.. onRail];
        var byPart = parts.ToDictionary(part => part.Component.Id);
        foreach (var rail in rails)
            rail.Cells = [.. DerivedRails.CellsOf(rail.Rail, this).Select(cell => byPart[cell.Id])];
        return (rails, parts);
    }

    private static string Said(string? source, Rail rail) => source is null ? $"rail {rail.Name}" : $"rail {rail.Name}: {source}";
}
