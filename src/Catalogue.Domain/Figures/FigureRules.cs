using System.Security.Cryptography;
using System.Text;
using Catalogue.Domain.Components;
using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Figures;

/// <summary>All kinds of figure, in the order they are shown.</summary>
public static class FigureRules
{
    /// <summary>All of them.</summary>
    public static IReadOnlyList<FigureRule> All { get; } =
    [
        new(FuseHeadroom.Rule, FuseHeadroom.Version, "Fuse headroom", "current allowed ÷ current needed: more is better", Unit.Ratio, true, [("allowed", "I_allowed"), ("needed", "I_needed"), ("rated", "I_rated")])
        {
            OfPart = (part, lines) => part.Is(FunctionClass.Fuse) ? FuseHeadroom.Compute(FuseHeadroom.Inputs.Of(part), lines) : null,
        },
        new(BreakingCapacity.Rule, BreakingCapacity.Version, "Breaking capacity", "what the fuse can break ÷ what a short can draw: more is better", Unit.Ratio, true, [("can break", "I_break"), ("short", "I_short")])
        {
            OfPart = (part, _) => BreakingCapacity.AppliesTo(part) ? BreakingCapacity.Compute(BreakingCapacity.Inputs.Of(part)) : null,
        },
        new(VoltageMargin.Rule, VoltageMargin.Version, "Voltage margin", "share of the rated voltage that is left: more is better", Unit.Ratio, true, [("across it", "V_stress"), ("across it", "V_peak"), ("rated", "V_rated")])
        {
            OfPart = (part, lines) => Applies(part, VoltageMargin.AppliesTo) ? VoltageMargin.Compute(VoltageMargin.Inputs.Of(part), lines) : null,
        },
        new(CurrentMargin.Rule, CurrentMargin.Version, "Current margin", "share of the rated current that is left: more is better", Unit.Ratio, true, [("through it", "I_rms"), ("through it", "I_mean"), ("through it", "I_needed"), ("rated", "I_rated")])
        {
            OfPart = (part, lines) => Applies(part, CurrentMargin.AppliesTo) ? CurrentMargin.Compute(CurrentMargin.Inputs.Of(part), lines) : null,
        },
        new(JunctionTemperature.Rule, JunctionTemperature.Version, "Junction temperature", "by conduction alone: less is better", Unit.DegreeCelsius, false, [("loss", "P_j"), ("highest", "T_max")])
        {
            OfPart = (part, lines) => JunctionTemperature.AppliesTo(part) ? JunctionTemperature.Compute(JunctionTemperature.Inputs.Of(part), lines) : null,
        },
        new(ConductionLoss.Rule, ConductionLoss.Version, "Conduction loss", "heat while conducting, the whole place", Unit.Watt, null, [("through it", "I_rms"), ("through it", "I_mean"), ("through it", "I_needed"), ("one part", "P_each")])
        {
            OfPart = (part, _) => Applies(part, ConductionLoss.AppliesTo) ? ConductionLoss.Compute(ConductionLoss.Inputs.Of(part)) : null,
        },
        new(AluminiumLife.Rule, AluminiumLife.Version, "Capacitor life", "estimate by the rule of ten degrees", Unit.Second, null, [("rated", "L_0"), ("at", "T_rated"), ("measured", "T_part")])
        {
            OfPart = (part, _) => AluminiumLife.AppliesTo(part) ? AluminiumLife.Compute(AluminiumLife.Inputs.Of(part)) : null,
        },
        new(PackEnergy.Rule, PackEnergy.Version, "Pack energy", "from the arrangement of the cells", Unit.WattHour, null, [("one cell", "Q_cell"), ("at", "v")])
        {
            OfPart = (part, _) => part.Is(FunctionClass.Cell) ? PackEnergy.Compute(PackEnergy.Inputs.Of(part)) : null,
        },
        new(StoredEnergy.Rule, StoredEnergy.Version, "Stored energy", "in the capacitors across the rail", Unit.Joule, null, [("across it", "V"), ("capacitance", "C")])
        {
            OfRail = rail => StoredEnergy.AppliesTo(rail) ? StoredEnergy.Compute(rail) : null,
        },
        new(DischargeTime.Rule, DischargeTime.Version, "Discharge time", "to 60 V through the recorded bleed path", Unit.Second, null, [("bleed", "R"), ("capacitance", "C")])
        {
            OfRail = rail => DischargeTime.AppliesTo(rail) ? DischargeTime.Compute(rail) : null,
        },
        new(BusRipple.Rule, BusRipple.Version, "Bus ripple", "peak to peak at twice the line frequency", Unit.Volt, null, [("capacitance", "C"), ("current", "I_2f")])
        {
            OfRail = rail => BusRipple.AppliesTo(rail) ? BusRipple.Compute(rail) : null,
        },
        new(BusValley.Rule, BusValley.Version, "Bus valley", "lowest point of a rectified bus between two peaks of the mains", Unit.Volt, null, [("peak", "V_pk"), ("capacitance", "C")])
        {
            OfRail = rail => BusValley.AppliesTo(rail) ? BusValley.Compute(rail) : null,
        },
    ];

    /// <summary>The rule of a code, or null for one that is no longer there.</summary>
    public static FigureRule? Find(string code)
    {
        foreach (var rule in All)
            if (rule.Code == code)
                return rule;
        return null;
    }

    /// <summary>Says by which rules and lines figures were computed: it differs whenever the same facts could give another figure.</summary>
    public static string Stamp(LineTable lines)
    {
        ArgumentNullException.ThrowIfNull(lines);
        var text = string.Join(';', All.Select(rule => FormattableString.Invariant($"{rule.Code} {rule.Version}"))) + "|" + lines.Stamp;
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));
    }

    private static bool Applies(PartFacts part, Func<FunctionClass, bool> to) => part.Component.FunctionClass is { } functionClass && to(functionClass);
}
