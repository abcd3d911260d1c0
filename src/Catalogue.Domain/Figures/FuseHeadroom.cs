using Catalogue.Domain.Components;
using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Figures;

/// <summary>How much more current the fuses of a place may carry than the rail asks of them.</summary>
/// <remarks>
/// <para><c>I_allowed = I_rated · n · k_share · k_derating · k_temp</c>, <c>k_temp = 1 − s · max(0, T − 25 °C)</c></para>
/// <para><c>I_needed</c> as <see cref="RailLoad"/> says; <c>headroom = I_allowed / I_needed</c>; 1.00 exactly meets the convention. Currents in
/// ampere, temperatures in °C; the k are ratios.</para>
/// <para>Source: definitions of fuse headroom and utilisation; the derating is a trade convention that <see cref="LineTable"/> holds.</para>
/// </remarks>
public static class FuseHeadroom
{
    /// <summary>The rule's code.</summary>
    public const string Rule = "fuse_headroom";

    /// <summary>Raised whenever the same inputs could give another result.</summary>
    public const int Version = 3;

    private const double ReferenceTemperatureDegC = 25;

    /// <summary>The facts the rule takes; each may be missing.</summary>
    public sealed record Inputs : RailLoad
    {
        /// <summary>Rated current of one fuse, in ampere.</summary>
        public Given? RatedCurrent { get; init; }

        /// <summary>How many fuses share the current, from 1.</summary>
        public int ParallelCount { get; init; } = 1;

        /// <summary>How evenly they share it, 0 to 1; needed for two and more.</summary>
        public Given? Sharing { get; init; }

        /// <summary>The class of the fuse; it decides the convention.</summary>
        public FunctionClass? FunctionClass { get; init; }

        /// <summary>A derating that the reviewer gives instead of the convention, 0 to 1.</summary>
        public Given? Derating { get; init; }

        /// <summary>Temperature around the fuse, in °C.</summary>
        public Given? AmbientTemperature { get; init; }

        /// <summary>Loss of allowed current per °C above 25 °C.</summary>
        public Given? TemperatureSlope { get; init; }

        /// <summary>The facts of a part.</summary>
        public static Inputs Of(PartFacts part)
        {
            ArgumentNullException.ThrowIfNull(part);
            return (Inputs)new Inputs
            {
                RatedCurrent = part.Best(RatingKind.RatedCurrent),
                ParallelCount = part.Component.ParallelCount,
                Sharing = part.Best(RatingKind.CurrentSharing),
                FunctionClass = part.Component.FunctionClass,
                Derating = part.Best(RatingKind.Derating),
                AmbientTemperature = part.Best(RatingKind.AmbientTemperature),
                TemperatureSlope = part.Best(RatingKind.TemperatureSlope),
            }.With(part.Rail);
        }
    }

    /// <summary>Computes the headroom, a ratio above zero, or says what is missing.</summary>
    public static FigureResult Compute(Inputs inputs, LineTable lines)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        ArgumentNullException.ThrowIfNull(lines);
        ArgumentOutOfRangeException.ThrowIfLessThan(inputs.ParallelCount, 1);
        var sheet = new Sheet();
        var rated = sheet.Need(inputs.RatedCurrent, "I_rated", "rated current of one fuse", Unit.Ampere, "rated_current", "the fuse's rated current");
        var together = rated * sheet.Set(Interval.Exactly(inputs.ParallelCount), "n", "fuses in parallel", Unit.Ratio, "arrangement as recorded");
        var allowed = inputs.ParallelCount == 1
            ? rated
            : together * sheet.Need(inputs.Sharing, "k_share", "current sharing", Unit.Ratio, "current_sharing", $"how evenly the {inputs.ParallelCount} fuses share the current");
        var (derating, convention) = Derating(sheet, inputs, lines);
        allowed *= derating;
        var temperature = TemperatureFactor(sheet, inputs);
        var needed = inputs.Needed(sheet, "fuse");
        if (temperature is not null)
            allowed *= sheet.Step("k_temp", "temperature factor", Unit.Ratio, temperature);
        var margin = sheet.Step("I_allowed", "current allowed", Unit.Ampere, allowed);
        if (sheet.IsComplete && !(margin.Low > 0))
            sheet.Miss("temperature_slope", "a temperature slope that leaves some current allowed at this temperature");
        var headroom = sheet.Step("headroom", "fuse headroom", Unit.Ratio, margin / needed);

        sheet.Line(() => convention is null ? "Line at 1.00: the rating alone." : $"Line at 1.00: {convention}.");
        sheet.Line(() => $"Rating: {QuantityText.Of(needed.Nominal, Unit.Ampere)} needed of {QuantityText.Of(together.Nominal, Unit.Ampere)} rated.");
        sheet.Line(() => $"Ample from {QuantityText.TwoDecimals(lines.AmpleHeadroom)} on, a house rule.");
        // On the scale of the headroom the rating lies where the need equals what the fuses are rated for together.
        var rating = convention is null ? 1 : Math.Min(1, margin.Nominal / together.Nominal);
        return sheet.Finish(headroom, Unit.Ratio, new FigureLines(true, rating, convention is null ? null : 1, lines.AmpleHeadroom));
    }

    private static (Term Factor, string? Convention) Derating(Sheet sheet, Inputs inputs, LineTable lines)
    {
        if (inputs.Derating is { } given)
            return (sheet.Know(given, "k_derating", "derating", Unit.Ratio), "the derating given for this fuse");
        var (guideline, whyNot) = lines.Guideline(inputs.FunctionClass, StressKind.Current, inputs.AmbientTemperature, inputs.RatedCurrent);
        if (guideline is not null)
            return (sheet.Set(Interval.Exactly(guideline.Factor), "k_derating", "derating", Unit.Ratio, guideline.Source), guideline.Words);
        sheet.Note($"No derating applies, the line is the rating alone: {whyNot}.");
        return (sheet.Set(Interval.Exactly(1), "k_derating", "derating", Unit.Ratio, "none: the rating alone"), null);
    }

    // Null where the temperature changes nothing, or is left out.
    private static Term? TemperatureFactor(Sheet sheet, Inputs inputs)
    {
        if (inputs.AmbientTemperature is not { } ambient)
        {
            sheet.LeaveOut("The temperature around the fuse is not recorded; a warm fuse carries less.");
            return null;
        }

        var temperature = sheet.Know(ambient, "T", "ambient temperature", Unit.DegreeCelsius);
        if (ambient.Interval.High <= ReferenceTemperatureDegC)
            return null;
        if (inputs.TemperatureSlope is null)
        {
            sheet.LeaveOut("How fast this fuse loses current with temperature is not recorded.");
            return null;
        }

        var slope = sheet.Need(inputs.TemperatureSlope, "s", "temperature slope", Unit.PerDegreeCelsius, "temperature_slope", "the temperature slope", mayBeZero: true);
        return Term.Number(1) - (slope * Term.AtLeastZero(temperature - Term.Fixed(ReferenceTemperatureDegC, Unit.DegreeCelsius)));
    }
}
