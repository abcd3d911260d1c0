using Catalogue.Domain.Components;
using Catalogue.Domain.Rails;
using Catalogue.Domain.Teardowns;

namespace Catalogue.Domain.Figures;

/// <summary>Computes every figure of a revision from its facts.</summary>
public static class RevisionFigures
{
    /// <summary>
    /// One figure for each rule and component it applies to, in the order of the components; those that lack an input come as unknown.
    /// Places left empty have none.
    /// </summary>
    public static IReadOnlyList<Figure> Compute(RevisionId revision, RevisionFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        var ratings = facts.Ratings.ToLookup(rating => rating.ComponentId);
        var rails = facts.Rails.ToDictionary(rail => rail.Id);
        var quantities = facts.RailQuantities.ToLookup(quantity => quantity.RailId);
        var figures = new List<Figure>();
        foreach (var component in facts.Components)
        {
            if (!component.IsFitted || component.FunctionClass is not { } functionClass || !functionClass.Is(FunctionClass.Fuse))
                continue;
            var rail = component.RailId is { } railId && rails.TryGetValue(railId, out var found) ? found : null;
            var of = rail is null ? [] : quantities[rail.Id].ToDictionary(quantity => quantity.Kind, quantity => new Given(quantity.Interval, quantity.Evidence, Source(quantity.Source, rail)));
            var own = ratings[component.Id].ToList();
            figures.Add(Figure.From(revision, component.Id, FuseHeadroom.Rule, FuseHeadroom.Version, FuseHeadroom.Compute(new FuseHeadroom.Inputs
            {
                RatedCurrent = Best(own, RatingKind.RatedCurrent),
                ParallelCount = component.ParallelCount,
                Sharing = Best(own, RatingKind.CurrentSharing),
                FunctionClass = component.FunctionClass,
                Derating = Best(own, RatingKind.Derating),
                AmbientTemperature = Best(own, RatingKind.AmbientTemperature),
                TemperatureSlope = Best(own, RatingKind.TemperatureSlope),
                HasRail = rail is not null,
                IsMains = rail?.Kind is RailKind.Mains,
                MaxCurrent = of.GetValueOrDefault(RailQuantityKind.MaxCurrent),
                MinVoltage = of.GetValueOrDefault(RailQuantityKind.MinVoltage),
                MaxPower = of.GetValueOrDefault(RailQuantityKind.MaxPower),
                Efficiency = of.GetValueOrDefault(RailQuantityKind.Efficiency),
                PowerFactor = of.GetValueOrDefault(RailQuantityKind.PowerFactor),
            })));
        }

        return figures;
    }

    // The strongest evidence; of equals the one that leaves least room: the smallest of what a part may bear, the largest of what wears on it.
    private static Given? Best(IEnumerable<Rating> ratings, RatingKind kind) =>
        ratings.Where(rating => rating.Kind == kind)
            .OrderBy(rating => rating.Evidence)
            .ThenBy(rating => kind is RatingKind.AmbientTemperature or RatingKind.TemperatureSlope ? -rating.High : rating.Low)
            .ThenBy(rating => kind is RatingKind.AmbientTemperature or RatingKind.TemperatureSlope ? -rating.Nominal : rating.Nominal)
            .ThenBy(rating => rating.Id.Value)
            .Select(rating => new Given(rating.Interval, rating.Evidence, rating.Source is { } source && rating.Condition is { } condition ? $"{source}, {condition}" : rating.Source ?? rating.Condition))
            .FirstOrDefault();

    private static string Source(string? source, Rail rail) => source is null ? $"rail {rail.Name}" : $"rail {rail.Name}: {source}";
}
