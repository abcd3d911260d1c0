using Catalogue.Domain.Quantities;
using static Catalogue.Domain.Derating.DeratingSource;

namespace Catalogue.Domain.Derating;

/// <summary>Finds the guideline of a preset.</summary>
/// <remarks>
/// Where several rows of a preset fit, the better founded one counts, and of equally founded ones the stricter: a house rule. A row marked low never counts.
/// </remarks>
public static class DeratingPresets
{
    /// <summary>The preset taken where none is chosen.</summary>
    public const DeratingPreset Default = DeratingPreset.Industrial;

    private static readonly DeratingSource[] Space = [Nasa, Ecss];
    private static readonly DeratingSource[] Industrial = [Ipc, TradeConvention];

    /// <summary>The guideline for a part.</summary>
    /// <param name="preset">The choice of guidelines.</param>
    /// <param name="part">The part's class.</param>
    /// <param name="parameter">What is derated.</param>
    /// <param name="temperature">Around the part, in °C; null where not known.</param>
    /// <param name="ratedCurrent">Of a fuse, in ampere; null where not known or no fuse.</param>
    public static DeratingLine Find(
        DeratingPreset preset, DeratingPart part, DeratingParameter parameter, Interval? temperature = null, double? ratedCurrent = null)
    {
        if (preset is DeratingPreset.DataSheet)
            return TheRatingItself(part, parameter);
        var usable = DeratingTable.UsableFor(part, parameter).ToList();
        var (first, fill) = preset is DeratingPreset.Space ? (Space, Industrial) : (Industrial, Space);
        var rows = usable.Where(row => first.Contains(row.Source)).ToList();
        if (rows.Count == 0)
            // Space guides are filled by the fuse conventions only, never by a milder guide.
            rows = [.. usable.Where(row => fill.Contains(row.Source) && (preset is DeratingPreset.Industrial || row.Source is TradeConvention))];
        return rows.Count == 0 ? new DeratingLine.None() : Apply(rows, temperature, ratedCurrent);
    }

    private static DeratingLine.Applied TheRatingItself(DeratingPart part, DeratingParameter parameter)
    {
        var isTemperature = parameter is DeratingParameter.JunctionTemperature or DeratingParameter.TemperatureMargin;
        var guideline = new DeratingGuideline(DataSheet, part, parameter, isTemperature ? 0 : 1, Confidence.High, "the rating itself")
        {
            Measure = isTemperature ? DeratingMeasure.DegCBelowRating : DeratingMeasure.Factor,
        };
        return new DeratingLine.Applied(guideline, Interval.Exactly(guideline.Value));
    }

    private static DeratingLine Apply(List<DeratingGuideline> rows, Interval? temperature, double? ratedCurrent)
    {
        var fitting = rows
            .Where(row => row.RatedAmpere is not { } range || (ratedCurrent >= range.From && ratedCurrent <= range.To))
            .OrderBy(row => row.Mark)
            .ThenBy(row => row.Value)
            .FirstOrDefault();
        if (fitting is null)
            return new DeratingLine.NotApplied(rows[0], ratedCurrent is null ? "it depends on the rated current, which is not known" : "it has no row for this rated current");
        if (temperature is not { } degC)
            return fitting.Line is null
                ? new DeratingLine.Applied(fitting, Interval.Exactly(fitting.Value))
                : new DeratingLine.NotApplied(fitting, "it falls with temperature, and the temperature of the part is not known");
        return (fitting.FactorAt(degC.High), fitting.FactorAt(degC.Nominal), fitting.FactorAt(degC.Low)) is ({ } hot, { } nominal, { } cold)
            ? new DeratingLine.Applied(fitting, Interval.Create(hot, nominal, cold))
            : new DeratingLine.NotApplied(fitting, "the part may be warmer than the guideline reaches");
    }
}
