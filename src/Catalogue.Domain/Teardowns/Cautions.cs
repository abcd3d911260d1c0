using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Packs;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Rails;

namespace Catalogue.Domain.Teardowns;

/// <summary>
/// The cautions of a teardown, derived from what is recorded. They are raised, never lowered, by a missing value: an unknown capacitance on a
/// bus above 60 V is taken as dangerous.
/// </summary>
public static class Cautions
{
    /// <summary>Stands after every list of cautions.</summary>
    public const string Deferral =
        "This record documents one unit. It is not a repair guide and gives no assurance that an opened unit is safe to use again. "
        + "Local electrical and battery codes, and people licensed under them, take precedence over anything shown here.";

    /// <summary>Stands wherever figures are shown.</summary>
    public const string Screening =
        "Figures are screening figures, computed from one sample and from what could be read and measured. They certify nothing; the applicable standard, "
        + "local codes and licensed practice decide.";

    /// <summary>A rail above this calls for a caution, in volt dc; a house rule.</summary>
    public const double TouchLimitVolts = 60;

    /// <summary>The cautions that the facts call for, most dangerous first; may be empty.</summary>
    public static IReadOnlyList<Caution> For(Revision revision, RevisionFacts facts)
    {
        ArgumentNullException.ThrowIfNull(revision);
        ArgumentNullException.ThrowIfNull(facts);
        var cautions = new List<Caution>();
        var byRail = facts.RailQuantities.ToLookup(quantity => quantity.RailId);
        var high = facts.Rails
            .Select(rail => (Rail: rail, Volts: HighestVolts(byRail[rail.Id])))
            .Where(found => found.Rail.Kind is not RailKind.Mains && found.Volts > TouchLimitVolts)
            .OrderByDescending(found => found.Volts)
            .ToList();

        foreach (var (rail, volts) in high)
            cautions.Add(Stored(rail, volts, facts));
        if (facts.Rails.Any(rail => rail.Kind is RailKind.Mains))
            cautions.Add(new Caution(
                "mains",
                "Mains voltage",
                $"{Names(facts.Rails.Where(rail => rail.Kind is RailKind.Mains))} connects straight to the mains. Opening or powering the unit uncovered can kill. Work like this is for people trained for it, with the supply isolated."));
        var hasPack = facts.Rails.Any(rail => rail.Kind is RailKind.Pack);
        if (revision.CellChemistry is { } chemistry)
            cautions.Add(new Caution(
                "lithium_cells",
                ChemistryWords.IsLithium(chemistry) ? "Lithium cells" : "Cells",
                $"Cells: {chemistry}. Do not pierce, bend, crush or heat them. A swollen, hot, leaking or dented cell is left alone and moved by someone equipped for it. The pack cannot be turned off: its terminals stay live throughout."));
        else if (hasPack || facts.Components.Any(component => component.FunctionClass is FunctionClass.Cell))
            cautions.Add(new Caution(
                "lithium_cells",
                "Cells of unrecorded chemistry",
                "Cells are recorded, their chemistry is not: treat them as lithium. Do not pierce, bend, crush or heat them. The pack cannot be turned off: its terminals stay live throughout."));
        if (hasPack)
            cautions.Add(new Caution(
                "low_voltage_high_current",
                "Low voltage, high current",
                $"A slipped tool across {Names(facts.Rails.Where(rail => rail.Kind is RailKind.Pack))} can weld, burn or start a fire."));
        return cautions;
    }

    private static Caution Stored(Rail rail, double volts, RevisionFacts facts)
    {
        var onRail = facts.Components.Where(component => component.IsFitted && component.RailId == rail.Id && component.FunctionClass is { } c && c.Is(FunctionClass.Capacitor)).ToList();
        var ratings = facts.Ratings.Where(rating => rating.Kind is RatingKind.Capacitance).ToLookup(rating => rating.ComponentId);
        var farads = onRail.Sum(component => ratings[component.Id].Select(rating => rating.High).DefaultIfEmpty(0).Max() * component.ParallelCount / component.SeriesCount);
        var recorded = onRail.Count > 0 && farads > 0 && onRail.All(component => ratings[component.Id].Any());
        var energy = recorded
            ? $" Recorded there: {QuantityText.Of(farads, Unit.Farad, 3)}, about {QuantityText.Number(farads * volts * volts / 2, 2)} J."
            : " What is stored there is not fully recorded.";
        return new Caution(
            "charged_capacitor",
            "Charged capacitors",
            $"{rail.Name} reaches {QuantityText.Of(volts, Unit.Volt)} and can stay charged after unplugging.{energy} Treat it as live until measured with a rated meter.",
            rail.Id);
    }

    private static double HighestVolts(IEnumerable<RailQuantity> quantities) =>
        quantities.Where(quantity => quantity.Kind is RailQuantityKind.MinVoltage or RailQuantityKind.NominalVoltage or RailQuantityKind.MaxVoltage)
            .Select(quantity => quantity.High)
            .DefaultIfEmpty(0)
            .Max();

    private static string Names(IEnumerable<Rail> rails) => string.Join(", ", rails.Select(rail => rail.Name));
}
