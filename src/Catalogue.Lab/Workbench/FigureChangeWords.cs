using Catalogue.Domain.Figures;
using Catalogue.Domain.Identification;
using Catalogue.Domain.Quantities;

namespace Catalogue.Lab.Workbench;

/// <summary>A figure that would come out differently, in words.</summary>
public static class FigureChangeWords
{
    /// <summary>Such as <c>Voltage margin of Q7: not computed, then ample, 0.50</c>.</summary>
    public static string Words(this FigureChange change)
    {
        ArgumentNullException.ThrowIfNull(change);
        return $"{FigureRules.Find(change.Rule)?.Title ?? change.Rule} of {change.Subject}: {State(change.From, change.ValueFrom, change.Unit)}, then {State(change.To, change.ValueTo, change.Unit)}";
    }

    private static string State(Verdict? verdict, Interval? value, Unit unit) => (verdict, value) switch
    {
        (null, _) => "not asked",
        (_, null) => "not computed",
        (Verdict.NoLine, { } known) => Value(known.Nominal, unit),
        ({ } judged, { } known) => $"{judged.Word()}, {Value(known.Nominal, unit)}",
    };

    private static string Value(double value, Unit unit) => unit is Unit.Ratio ? QuantityText.TwoDecimals(value) : QuantityText.Of(value, unit, 3);
}
