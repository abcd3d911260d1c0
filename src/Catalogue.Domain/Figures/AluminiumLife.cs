using Catalogue.Domain.Components;
using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Figures;

/// <summary>How long an aluminium electrolytic capacitor may last at the temperature measured on it: twice as long for each 10 °C below its rating.</summary>
/// <remarks>
/// <c>L = L_0 · 2^((T_rated − T_part) / 10 °C)</c>, in second; L_0 the rated life at T_rated, T_part the measured temperature of the part, which holds the heating by
/// ripple current; temperatures in °C. Source: the trade's rule of ten degrees, not a clause of a standard; makers limit it to some years. Not for polymer parts.
/// </remarks>
public static class AluminiumLife
{
    /// <summary>The rule's code.</summary>
    public const string Rule = "aluminium_life";

    /// <summary>Raised whenever the same inputs could give another result.</summary>
    public const int Version = 1;

    /// <summary>How well the rule is founded.</summary>
    public const Confidence Mark = Confidence.Medium;

    private const double HighestSpanDegC = 300;

    /// <summary>The facts the rule takes.</summary>
    /// <param name="RatedLife">At the rated temperature, in second.</param>
    /// <param name="RatedTemperature">In °C.</param>
    /// <param name="PartTemperature">Of the part in use, measured, in °C.</param>
    public sealed record Inputs(Given? RatedLife, Given? RatedTemperature, Given? PartTemperature)
    {
        /// <summary>The facts of a part.</summary>
        public static Inputs Of(PartFacts part)
        {
            ArgumentNullException.ThrowIfNull(part);
            return new Inputs(part.Best(RatingKind.RatedLife), part.Best(RatingKind.MaxTemperature), part.Best(RatingKind.PartTemperature, rating => rating.Evidence is Evidence.Measured));
        }
    }

    /// <summary>True for an aluminium part, not said to be polymer, of which all three facts are recorded and the temperature is measured: nothing is estimated for it.</summary>
    public static bool AppliesTo(PartFacts part)
    {
        ArgumentNullException.ThrowIfNull(part);
        return part.Is(FunctionClass.AluminiumCapacitor) && !IsPolymer(part.Component) && Inputs.Of(part) is { RatedLife: not null, RatedTemperature: not null, PartTemperature: not null };
    }

    /// <summary>Computes the life, in second.</summary>
    public static FigureResult Compute(Inputs inputs)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        var sheet = new Sheet();
        var life = sheet.Need(inputs.RatedLife, "L_0", "rated life at the rated temperature", Unit.Second, "rated_life", "the rated life");
        var rated = sheet.Need(inputs.RatedTemperature, "T_rated", "rated temperature", Unit.DegreeCelsius, "max_temperature", "the rated temperature");
        var actual = sheet.Need(inputs.PartTemperature, "T_part", "measured temperature of the part", Unit.DegreeCelsius, "part_temperature", "the measured temperature of the part");
        if (sheet.IsComplete && !(Math.Max(Math.Abs(rated.High - actual.Low), Math.Abs(rated.Low - actual.High)) <= HighestSpanDegC))
            sheet.Miss("part_temperature", "a temperature within 300 °C of the rated one: the rule does not reach further");
        var estimate = sheet.Step("L", "life at the measured temperature", Unit.Second, life * Term.PowerOfTwo((rated - actual) / Term.Fixed(10, Unit.DegreeCelsius)));
        sheet.Line(() => "Held against no line: an estimate.");
        sheet.Note("Twice as long for each 10 °C cooler: the trade's rule of ten degrees, not read in a governing text; makers limit it to some years.");
        sheet.Note("It holds for the load and the surroundings in which the temperature was measured. Not for polymer parts.");
        return sheet.Finish(estimate, Unit.Second, FigureLines.None(moreIsBetter: true));
    }

    // One class holds both; what was written down of the part tells them apart.
    private static bool IsPolymer(BoardComponent part)
    {
        foreach (var text in (ReadOnlySpan<string?>)[part.Role, part.Package, part.Value, part.Description, part.Note])
            if (text?.Contains("polymer", StringComparison.OrdinalIgnoreCase) == true)
                return true;
        return false;
    }
}
