using Catalogue.Domain.Capacitors;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Rails;

namespace Catalogue.Domain.Figures;

/// <summary>How far a dc bus moves at twice the line frequency behind a power-factor stage or before a single-phase inverter.</summary>
/// <remarks>
/// <para><c>ΔV_pp = P / (2π · f · C · V)</c>, in volt peak to peak; P the power through the bus, f the line frequency, C as in
/// <see cref="RailCapacitance"/>, V the nominal bus voltage. The current it drives through the capacitors at 2f is <c>I = P / (√2 · V)</c>.</para>
/// <para>For a bus whose line frequency is recorded, but no line voltage: one that a rectifier feeds straight falls between peaks as <see cref="BusValley"/> says.</para>
/// <para>Source: energy balance of a sinusoidal power; ripple small against V.</para>
/// </remarks>
public static class BusRipple
{
    /// <summary>The rule's code.</summary>
    public const string Rule = "bus_ripple";

    /// <summary>Raised whenever the same inputs could give another result.</summary>
    public const int Version = 1;

    /// <summary>True for a dc bus whose line frequency is recorded, so that its power is known to pulse, and that no rectifier feeds straight.</summary>
    public static bool AppliesTo(RailFacts rail)
    {
        ArgumentNullException.ThrowIfNull(rail);
        return rail.Rail.Kind is RailKind.DcBus && rail.Of(RailQuantityKind.LineFrequency) is not null && rail.Of(RailQuantityKind.LineVoltage) is null;
    }

    /// <summary>Computes the ripple, in volt peak to peak.</summary>
    public static FigureResult Compute(RailFacts rail)
    {
        ArgumentNullException.ThrowIfNull(rail);
        var sheet = new Sheet();
        var power = sheet.Need(rail.Of(RailQuantityKind.MaxPower), "P", "power through the bus", Unit.Watt, "max_power", "the power through the bus");
        var voltage = sheet.Need(rail.Of(RailQuantityKind.NominalVoltage), "V", "nominal bus voltage", Unit.Volt, "nominal_voltage", "the bus's nominal voltage");
        var frequency = sheet.Need(rail.Of(RailQuantityKind.LineFrequency), "f", "line frequency", Unit.Hertz, "line_frequency", "the line frequency");
        var capacitance = RailCapacitance.On(sheet, rail);
        var current = sheet.Step("I_2f", "ripple current at twice the line frequency, rms", Unit.Ampere, power / (Term.SquareRoot(Term.Number(2)) * voltage));
        var ripple = sheet.Step("ΔV_pp", "bus ripple, peak to peak", Unit.Volt, power / (Term.Number(2 * Math.PI) * frequency * capacitance * voltage));
        if (sheet.IsComplete)
        {
            sheet.Note($"That is {QuantityText.Number(100 * ripple.Nominal / voltage.Nominal, 3)} % of the bus voltage, and {QuantityText.Number(1e6 * capacitance.Nominal / power.Nominal, 3)} µF/W; {BulkRule.For(BulkUse.PowerFactorBus).Words} is usual, a rule of thumb.");
            sheet.Note($"The capacitors carry {QuantityText.Of(current.Nominal, Unit.Ampere, 3)} rms of it at twice the line frequency; switching ripple comes on top.");
        }

        sheet.Line(() => "Held against no line. Efficiency behind the bus is left out: the power is taken as recorded.");
        return sheet.Finish(ripple, Unit.Volt, FigureLines.None(moreIsBetter: false));
    }
}
