using Catalogue.Domain.Capacitors;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Rails;

namespace Catalogue.Domain.Figures;

/// <summary>How far a bus made by a mains rectifier and its capacitors falls between two peaks of the mains.</summary>
/// <remarks>
/// <para><c>V_valley = V_pk · s(k)</c>, <c>V_pk = √2 · V_line</c>, <c>k = P_in / (f · C · V_pk²)</c>, <c>P_in = P / η</c>; s solves <c>1 − s² = k · (½ + asin(s) / π)</c>, as
/// <see cref="RectifierValley"/> says. In volt; V_line is the mains rms over its range, so the low case stands for the lowest mains.</para>
/// <para>For a bus whose line voltage is recorded: a rectifier feeds it straight. A bus behind a power-factor stage or before a single-phase inverter has no line voltage
/// of its own, and <see cref="BusRipple"/> instead. Source: physics, for stiff mains and without the drop of the diodes.</para>
/// </remarks>
public static class BusValley
{
    /// <summary>The rule's code.</summary>
    public const string Rule = "bus_valley";

    /// <summary>Raised whenever the same inputs could give another result.</summary>
    public const int Version = 1;

    /// <summary>True for a dc bus that mains are rectified into: its line voltage is recorded.</summary>
    public static bool AppliesTo(RailFacts rail)
    {
        ArgumentNullException.ThrowIfNull(rail);
        return rail.Rail.Kind is RailKind.DcBus && rail.Of(RailQuantityKind.LineVoltage) is not null;
    }

    /// <summary>Computes the valley, in volt.</summary>
    public static FigureResult Compute(RailFacts rail)
    {
        ArgumentNullException.ThrowIfNull(rail);
        var sheet = new Sheet();
        var line = sheet.Need(rail.Of(RailQuantityKind.LineVoltage), "V_line", "line voltage over its range, rms", Unit.Volt, "line_voltage", "the line voltage that the bus is rectified from");
        var frequency = sheet.Need(rail.Of(RailQuantityKind.LineFrequency), "f", "line frequency", Unit.Hertz, "line_frequency", "the line frequency");
        var power = sheet.Need(rail.Of(RailQuantityKind.MaxPower), "P", "highest output power", Unit.Watt, "max_power", "the highest power that the bus feeds");
        var efficiency = sheet.Need(rail.Of(RailQuantityKind.Efficiency), "η", "efficiency from the bus to that output", Unit.Ratio, "efficiency", "the efficiency from the bus to its output");
        var capacitance = RailCapacitance.On(sheet, rail);
        var input = sheet.Step("P_in", "power drawn from the capacitors", Unit.Watt, power / efficiency);
        var peak = sheet.Step("V_pk", "peak of the bus", Unit.Volt, Term.SquareRoot(Term.Number(2)) * line);
        var load = sheet.Step("k", "load on the capacitors", Unit.Ratio, input / (frequency * capacitance * Term.Square(peak)));
        var valley = sheet.Step("V_valley", "valley of the bus", Unit.Volt, peak * Term.Function("s", RectifierValley.ShareOf, load));
        if (sheet.IsComplete)
            Explain(sheet, RectifierValley.Of(input.Interval, line.Interval, frequency.Interval, capacitance.Interval), input, capacitance);
        sheet.Line(() => "Held against no line. Stiff mains, without the drop of the diodes.");
        return sheet.Finish(valley, Unit.Volt, FigureLines.None(moreIsBetter: true));
    }

    private static void Explain(Sheet sheet, Reckoning<RectifierValley> reckoning, Term power, Term capacitance)
    {
        if (reckoning is Reckoning<RectifierValley>.Done { Value: var solved })
        {
            sheet.Note("s(k) is the share of the peak that is left when the rectifier conducts again: it solves 1 − s² = k · (½ + asin(s) / π), found by halving.");
            sheet.Note($"Ripple: {QuantityText.Of(solved.Ripple, Unit.Volt, 3)} peak to peak, over {QuantityText.Of(solved.DischargeTime.Nominal, Unit.Second, 3)} between peak and valley.");
            sheet.Note($"That is {QuantityText.Number(1e6 * capacitance.Nominal / power.Nominal, 3)} µF/W; {BulkRule.For(BulkUse.UniversalInput).Words} and {BulkRule.For(BulkUse.Mains230).Words} are usual, rules of thumb.");
            if (solved.CollapsesAtWorst)
                sheet.Note("In the worst case the capacitors cannot hold the load from one peak to the next: nothing is left.");
            return;
        }

        foreach (var (field, reason) in ((Reckoning<RectifierValley>.Refused)reckoning).Refusals)
            sheet.Miss(field is "capacitance" ? field : "plausible_inputs", field is "capacitance" ? "a capacitance that holds the load from one peak of the mains to the next" : reason);
    }
}
