using System.Globalization;
using Catalogue.Domain.Capacitors;
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
/// <remarks>Stored energy is weighed by <see cref="EnergyScreen"/>, a house rule; surfaces from 60 °C on count as hot, a house rule too.</remarks>
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
    public const double TouchLimitVolts = DischargeTime.TouchLimitVolts;

    /// <summary>A surface from this temperature on calls for a caution, in °C; a house rule.</summary>
    public const double HotFromDegC = 60;

    /// <summary>The cautions that the facts call for, most dangerous first; may be empty.</summary>
    public static IReadOnlyList<Caution> For(Revision revision, RevisionFacts facts)
    {
        ArgumentNullException.ThrowIfNull(revision);
        ArgumentNullException.ThrowIfNull(facts);
        var rails = facts.ByRail();
        var cautions = new List<Caution>();
        var stored = rails.Where(rail => !rail.IsMains).Select(rail => (Rail: rail, Screen: ScreenOf(rail))).Where(found => found.Screen is { Band: > EnergyBand.Note }).ToList();
        cautions.AddRange(stored.Where(found => found.Screen!.Band > EnergyBand.Burn).OrderByDescending(found => found.Screen!.Band).ThenByDescending(found => found.Rail.PeakVolts).Select(found => Charged(found.Rail, found.Screen!)));
        if (rails.Any(rail => rail.IsMains))
            cautions.Add(new Caution(
                "mains",
                "Mains voltage",
                $"{Names(rails.Where(rail => rail.IsMains))} connects straight to the mains. Opening or powering the unit uncovered can kill. Work like this is for people trained for it, with the supply isolated."));
        if (Barrier(facts, rails) is { } barrier)
            cautions.Add(barrier);
        var packs = rails.Where(rail => rail.Rail.Kind is RailKind.Pack).ToList();
        if (revision.CellChemistry is { } chemistry)
            cautions.Add(new Caution(
                "lithium_cells",
                ChemistryWords.IsLithium(chemistry) ? "Lithium cells" : "Cells",
                $"Cells: {chemistry}. Do not pierce, bend, crush or heat them. A swollen, hot, leaking or dented cell is left alone and moved by someone equipped for it. The pack cannot be turned off: its terminals stay live throughout."));
        else if (packs.Count > 0 || facts.Components.Any(component => component.FunctionClass is FunctionClass.Cell))
            cautions.Add(new Caution(
                "lithium_cells",
                "Cells of unrecorded chemistry",
                "Cells are recorded, their chemistry is not: treat them as lithium. Do not pierce, bend, crush or heat them. The pack cannot be turned off: its terminals stay live throughout."));
        var burning = stored.Where(found => found.Screen!.Band is EnergyBand.Burn).Select(found => found.Rail).ToList();
        if (burning.Count > 0)
            cautions.Add(new Caution(
                "low_voltage_high_current",
                "Low voltage, high current",
                $"A slipped tool across {Names(burning)} can weld, burn or start a fire."));
        if (facts.Tests.Where(test => test is { Unit: Unit.DegreeCelsius } && (test.High ?? test.Value) >= HotFromDegC && test.Subject.Contains("temperature", StringComparison.OrdinalIgnoreCase) && !test.Subject.Contains("rise", StringComparison.OrdinalIgnoreCase)).MaxBy(test => test.High ?? test.Value) is { } hottest)
            cautions.Add(new Caution(
                "hot_part",
                "Hot surfaces",
                $"{hottest.Subject}: {QuantityText.Of((hottest.High ?? hottest.Value)!.Value, Unit.DegreeCelsius, 3)} in our test. Let it cool before touching."));
        return cautions;
    }

    // Where insulation alone stands between mains and what a hand may reach: mains and a secondary on one board, or a path that was measured across it.
    private static Caution? Barrier(RevisionFacts facts, IReadOnlyList<RailFacts> rails)
    {
        var paths = facts.IsolationPaths.Where(path => path.CrossesBarrier).ToList();
        var boards = rails
            .SelectMany(rail => rail.Parts.Select(part => (part.Component.BoardId, Rail: rail)))
            .Distinct()
            .GroupBy(found => found.BoardId, found => found.Rail)
            .Where(board => board.Any(rail => rail.IsMains) && board.Any(IsReachable))
            .ToList();
        if (paths.Count == 0 && boards.Count == 0)
            return null;
        var meet = boards.Select(board => $"{Names(board.Where(rail => rail.IsMains))} and {Names(board.Where(IsReachable))} meet on one board. ").Distinct();
        var measured = paths.Count switch
        {
            0 => "No path across the insulation between them was measured.",
            1 => $"The path from {paths[0].From} to {paths[0].To} was measured across it.",
            var several => $"{several.ToString(CultureInfo.InvariantCulture)} paths were measured across it.",
        };
        return new Caution(
            "isolation_barrier",
            "Insulation between mains and what can be touched",
            $"{string.Concat(meet)}{measured} A distance seen from outside does not show that the insulation holds, and an opened, cut or scraped barrier is no longer the one that was built. "
            + "What this record shows is no ground to power or use such a unit: the product standard, local codes and people licensed under them decide.");
    }

    // A dc rail of a port, or a low-voltage one: what a user may come to touch.
    private static bool IsReachable(RailFacts rail) => !rail.IsMains && (rail.Rail.PortId is not null || rail.Rail.Kind is RailKind.LowVoltage);

    // Null for a low-voltage rail of which nothing says that it stores much: every 5 V supply would else carry a caution.
    private static EnergyScreen? ScreenOf(RailFacts rail)
    {
        var isBattery = rail.Rail.Kind is RailKind.Pack;
        var capacitors = RailCapacitance.Of(rail).ToList();
        if (rail.PeakVolts is not { } volts)
            return isBattery || rail.Rail.Kind is RailKind.DcBus ? EnergyScreen.Of(null, Capacitance(capacitors), isBattery) : null;
        var capacitance = Capacitance(capacitors);
        return volts <= TouchLimitVolts && capacitance is null && !isBattery ? null : EnergyScreen.Of(Interval.Exactly(volts), capacitance, isBattery);
    }

    // Null where one is not known: what is there may be more than what is recorded.
    private static Interval? Capacitance(List<PartFacts> capacitors)
    {
        if (capacitors.Count == 0)
            return null;
        var farads = 0.0;
        foreach (var part in capacitors)
        {
            if (part.Best(RatingKind.Capacitance) is not { } one)
                return null;
            farads += one.Interval.High * part.Component.ParallelCount / part.Component.SeriesCount;
        }

        return Interval.TryCreate(farads, farads, farads);
    }

    private static Caution Charged(RailFacts rail, EnergyScreen screen)
    {
        var reaches = rail.PeakVolts is { } volts ? $"{rail.Rail.Name} reaches {QuantityText.Of(volts, Unit.Volt)}" : $"How high {rail.Rail.Name} reaches is not recorded";
        if (rail.Rail.Kind is RailKind.Pack)
            return new Caution(
                screen.TextKey!, "Pack above 60 V", $"{reaches}. The pack cannot be turned off, and such a voltage can injure or kill. Work like this is for people trained for it.", rail.Rail.Id);
        var energy = Capacitance([.. RailCapacitance.Of(rail)]) is { } farads && rail.PeakVolts is { } peak
            ? $" Recorded there: {QuantityText.Of(farads.High, Unit.Farad, 3)}, about {QuantityText.Number(farads.High * peak * peak / 2, 2)} J."
            : " What is stored there is not fully recorded.";
        var injury = screen.Band switch
        {
            EnergyBand.Danger => " Stored energy here is enough to injure seriously.",
            EnergyBand.Warning => " Stored energy here is enough to injure.",
            _ => "",
        };
        var bleed = DischargeTime.AppliesTo(rail) && DischargeTime.Compute(rail) is FigureResult.Computed time
            ? $" By the recorded bleed path it needs about {QuantityText.Of(time.Value.High, Unit.Second, 2)} to fall to 60 V; that is computed, not measured."
            : rail.Of(RailQuantityKind.BleedResistance) is null ? " No bleed path is recorded." : "";
        return new Caution(
            screen.TextKey!,
            "Charged capacitors",
            $"{reaches} and can stay charged after unplugging.{energy}{injury}{bleed} Treat it as live until measured with a rated meter.",
            rail.Rail.Id);
    }

    private static string Names(IEnumerable<RailFacts> rails) => string.Join(", ", rails.Select(rail => rail.Rail.Name));
}
