using Catalogue.Domain.Quantities;
using Catalogue.Domain.Rails;

namespace Catalogue.Domain.Figures;

/// <summary>How long the recorded bleed path takes to bring a rail below the touch-safe limit after switching off.</summary>
/// <remarks>
/// <c>t = R · C · ln(V / V_touch)</c>, in second; R the bleed resistance, C as in <see cref="RailCapacitance"/>, V_touch = 60 V dc. Without a
/// recorded bleed path the time is unknown, and the caution stays. The time is computed, not measured: a bleeder may be open.
/// Source: physics; the limit is a house rule after the 60 V dc of electrical source class 1 in IEC 62368-1.
/// </remarks>
public static class DischargeTime
{
    /// <summary>The rule's code.</summary>
    public const string Rule = "discharge_time";

    /// <summary>Raised whenever the same inputs could give another result.</summary>
    public const int Version = 1;

    /// <summary>The touch-safe limit, in volt dc.</summary>
    public const double TouchLimitVolts = 60;

    /// <summary>True for a rail with capacitors across it that reaches more than the touch-safe limit.</summary>
    public static bool AppliesTo(RailFacts rail)
    {
        ArgumentNullException.ThrowIfNull(rail);
        return rail.Rail.Kind is not (RailKind.Mains or RailKind.Pack) && rail.PeakVolts > TouchLimitVolts && RailCapacitance.Of(rail).Any();
    }

    /// <summary>Computes the time, in second.</summary>
    public static FigureResult Compute(RailFacts rail)
    {
        ArgumentNullException.ThrowIfNull(rail);
        var sheet = new Sheet();
        var capacitance = RailCapacitance.On(sheet, rail);
        var voltage = sheet.Need(rail.Highest, "V", "highest voltage of the rail", Unit.Volt, "max_voltage", "the rail's highest voltage");
        var bleed = sheet.Need(rail.Of(RailQuantityKind.BleedResistance), "R", "bleed resistance", Unit.Ohm, "bleed_resistance", "what bleeds the rail when it is switched off");
        var limit = sheet.Set(Interval.Exactly(TouchLimitVolts), "V_touch", "touch-safe limit, dc", Unit.Volt, "house rule, after the 60 V dc of electrical source class 1");
        var time = sheet.Step("t", "discharge time", Unit.Second, Term.AtLeastZero(bleed * capacitance * Term.Logarithm(voltage / limit)));
        sheet.Line(() => "Held against no line. Computed, not measured: treat the rail as live until a rated meter shows otherwise.");
        return sheet.Finish(time, Unit.Second, FigureLines.None(moreIsBetter: false));
    }
}
