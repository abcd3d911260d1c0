using Catalogue.Domain.Components;
using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Figures;

/// <summary>How hot the junction of the hardest worked part of a place gets by conduction alone.</summary>
/// <remarks>
/// <para><c>T_j = T_a + P_j · R_th</c>, P_j the loss in one part as in <see cref="ConductionLoss"/>, R_th from junction to ambient as mounted, in °C/W;
/// temperatures in °C. The thermal resistance is never assumed.</para>
/// <para>Where the on-resistance is given a temperature coefficient a instead of a factor, <c>k_T = 1 + a · (T_j − 25 °C)</c>, the loss and the temperature follow
/// each other: with <c>g = P_j · R_th</c> at 25 °C, <c>T_j = (T_a + g · (1 − 25 °C · a)) / (1 − g · a)</c>. From <c>g · a = 1</c> on there is no stable
/// temperature. Source: physics.</para>
/// </remarks>
public static class JunctionTemperature
{
    /// <summary>The rule's code.</summary>
    public const string Rule = "junction_temperature";

    /// <summary>Raised whenever the same inputs could give another result.</summary>
    public const int Version = 2;

    /// <summary>The facts the rule takes; each may be missing.</summary>
    /// <param name="Loss">What the loss is computed from.</param>
    /// <param name="FunctionClass">The class of the part.</param>
    /// <param name="TemperatureCoefficient">Rise of the on-resistance, per °C; counts where no temperature factor is given.</param>
    /// <param name="ThermalResistance">From junction to ambient as mounted, in °C/W.</param>
    /// <param name="AmbientTemperature">Around the part, in °C.</param>
    /// <param name="MaxTemperature">The highest junction temperature, in °C.</param>
    public sealed record Inputs(ConductionLoss.Inputs Loss, FunctionClass FunctionClass, Given? TemperatureCoefficient, Given? ThermalResistance, Given? AmbientTemperature, Given? MaxTemperature)
    {
        /// <summary>The facts of a part.</summary>
        public static Inputs Of(PartFacts part)
        {
            ArgumentNullException.ThrowIfNull(part);
            return new Inputs(
                ConductionLoss.Inputs.Of(part),
                part.Component.FunctionClass ?? FunctionClass.OtherPart,
                part.Best(RatingKind.TemperatureCoefficient),
                part.Best(RatingKind.ThermalResistance),
                part.Best(RatingKind.AmbientTemperature),
                part.Best(RatingKind.MaxTemperature));
        }
    }

    /// <summary>True for a part of which a thermal resistance is recorded; without one there is nothing to compute it from.</summary>
    public static bool AppliesTo(PartFacts part)
    {
        ArgumentNullException.ThrowIfNull(part);
        return part.Component.FunctionClass is { } functionClass && ConductionLoss.AppliesTo(functionClass) && part.Best(RatingKind.ThermalResistance) is not null;
    }

    /// <summary>Computes the temperature, in °C.</summary>
    public static FigureResult Compute(Inputs inputs, LineTable lines)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        ArgumentNullException.ThrowIfNull(lines);
        var sheet = new Sheet();
        var selfHeats = inputs.TemperatureCoefficient is not null && inputs.Loss is { IsRectifier: false, TemperatureFactor: null };
        var (each, _) = ConductionLoss.Each(sheet, inputs.Loss, at25: selfHeats);
        var loss = sheet.Step("P_j", selfHeats ? "loss in one part at 25 °C" : "loss in one part", Unit.Watt, each);
        var resistance = sheet.Need(inputs.ThermalResistance, "R_th", "thermal resistance, junction to ambient", Unit.DegreeCelsiusPerWatt, "thermal_resistance", "the thermal resistance as mounted");
        var ambient = sheet.Need(inputs.AmbientTemperature, "T_a", "ambient temperature", Unit.DegreeCelsius, "ambient_temperature", "the temperature around the part");
        var temperature = sheet.Step("T_j", "junction temperature", Unit.DegreeCelsius, selfHeats ? SelfHeated(sheet, inputs, ambient, loss * resistance) : ambient + (loss * resistance));
        sheet.LeaveOut("Conduction only: switching loss heats the junction further.");
        if (inputs.MaxTemperature is not { } highest)
        {
            sheet.Line(() => "Held against no line: the highest junction temperature is not recorded.");
            return sheet.Finish(temperature, Unit.DegreeCelsius, FigureLines.None(moreIsBetter: false));
        }

        var limit = sheet.Know(highest, "T_max", "highest junction temperature", Unit.DegreeCelsius);
        var guideline = lines.JunctionLine(inputs.FunctionClass, limit.Nominal);
        var line = guideline?.DegC ?? limit.Nominal;
        sheet.Line(() => guideline is null
            ? $"Line at {QuantityText.Of(line, Unit.DegreeCelsius)}: the rating alone; the derating practice has no guideline for it."
            : $"Line at {QuantityText.Of(line, Unit.DegreeCelsius)}: {guideline.Value.Words}.");
        if (guideline is not null)
            sheet.Note($"Guideline: {guideline.Value.Source}.");
        return sheet.Finish(temperature, Unit.DegreeCelsius, new FigureLines(false, limit.Nominal, guideline is null ? null : line, null));
    }

    private static Term SelfHeated(Sheet sheet, Inputs inputs, Term ambient, Term rise)
    {
        var coefficient = sheet.Need(inputs.TemperatureCoefficient, "a", "temperature coefficient of on-resistance", Unit.PerDegreeCelsius, "temperature_coefficient", "the temperature coefficient", mayBeZero: true);
        var g = sheet.Step("g", "rise at 25 °C", Unit.DegreeCelsius, rise);
        var left = Term.Number(1) - (g * coefficient);
        if (sheet.IsComplete && !(left.Low > 0))
            sheet.Miss("stable_temperature", left.Nominal > 0 ? "a stable temperature: at worst the loss grows faster than it is carried off" : "a stable temperature: the loss grows faster than it is carried off");
        return (ambient + (g * (Term.Number(1) - (Term.Fixed(25, Unit.DegreeCelsius) * coefficient)))) / left;
    }
}
