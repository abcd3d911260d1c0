using Catalogue.Domain.Components;
using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Figures;

/// <summary>How much more current the fuses of a place may carry than the rail asks of them.</summary>
/// <remarks>
/// <para><c>I_allowed = I_rated · n · k_share · k_derating · k_temp</c>, <c>k_temp = 1 − s · max(0, T − 25 °C)</c></para>
/// <para><c>I_needed = P / (η · V_min · λ)</c>, or the rail's highest current where it is known</para>
/// <para><c>headroom = I_allowed / I_needed</c>; 1.00 exactly meets the convention. Currents in ampere, powers in watt, voltages in volt,
/// temperatures in °C; η (efficiency), λ (power factor) and the k are ratios.</para>
/// <para>V_min, not the nominal voltage: a load of constant power draws most when the voltage is lowest. Source: definitions of fuse
/// headroom and utilisation; the derating is a trade convention, see <see cref="FuseConvention"/>.</para>
/// </remarks>
public static class FuseHeadroom
{
    /// <summary>The rule's code.</summary>
    public const string Rule = "fuse_headroom";

    /// <summary>Raised whenever the same inputs could give another result.</summary>
    public const int Version = 2;

    private const double ReferenceTemperatureDegC = 25;

    /// <summary>The facts the rule takes; each may be missing.</summary>
    public sealed record Inputs
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

        /// <summary>True when the fuse has a rail.</summary>
        public bool HasRail { get; init; }

        /// <summary>True when the rail is mains, so that a power factor is needed.</summary>
        public bool IsMains { get; init; }

        /// <summary>The rail's highest steady current, in ampere.</summary>
        public Given? MaxCurrent { get; init; }

        /// <summary>The rail's lowest voltage in use, in volt.</summary>
        public Given? MinVoltage { get; init; }

        /// <summary>Highest steady output power, in watt.</summary>
        public Given? MaxPower { get; init; }

        /// <summary>Efficiency from the rail to that output, 0 to 1.</summary>
        public Given? Efficiency { get; init; }

        /// <summary>Power factor, 0 to 1.</summary>
        public Given? PowerFactor { get; init; }
    }

    /// <summary>Computes the headroom, a ratio above zero, or says what is missing.</summary>
    public static FigureResult Compute(Inputs inputs)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        ArgumentOutOfRangeException.ThrowIfLessThan(inputs.ParallelCount, 1);
        var known = new List<WorkingInput>();
        var missing = new List<MissingInput>();
        var notes = new List<string>();

        var rated = Take(inputs.RatedCurrent, "I_rated", "rated current of one fuse", Unit.Ampere, "rated_current", "the fuse's rated current", known, missing);
        var count = Interval.Exactly(inputs.ParallelCount);
        known.Add(new WorkingInput("n", "fuses in parallel", inputs.ParallelCount, inputs.ParallelCount, inputs.ParallelCount, Unit.Ratio, null, "arrangement as recorded"));
        var sharing = inputs.ParallelCount == 1
            ? Interval.Exactly(1)
            : Take(inputs.Sharing, "k_share", "current sharing", Unit.Ratio, "current_sharing", $"how evenly the {inputs.ParallelCount} fuses share the current", known, missing);
        var (derating, convention) = Derating(inputs, known, notes);
        var (temperature, temperatureLeftOut) = TemperatureFactor(inputs, known, missing, notes);
        var needed = NeededCurrent(inputs, known, missing);

        if (missing.Count > 0 || rated is not { } i || sharing is not { } share || temperature is not { } temp || needed is not { } need)
            return new FigureResult.Unknown(missing, new Working([], known, [], notes));
        if (Chain(i, count, share, derating, temp) is not { } allowed || Divide(allowed, need.Current) is not { } headroom)
            return new FigureResult.Unknown(
                [new MissingInput("plausible_inputs", "inputs of a size that can be computed with")], new Working([], known, [], notes));

        var usedOfRating = need.Current.Nominal / (i.Nominal * count.Nominal);
        var verdict = Judge(headroom, usedOfRating, convention is not null, temperatureLeftOut);
        var steps = need.Steps.Append(AllowedStep(i, inputs.ParallelCount, share, derating, temp, allowed)).Append(new WorkingStep(
            "headroom",
            "fuse headroom",
            "I_allowed / I_needed",
            $"{Ampere(allowed.Nominal)} / {Ampere(need.Current.Nominal)}",
            $"{Ampere(allowed.Low)} / {Ampere(need.Current.High)}",
            headroom.Low,
            headroom.Nominal,
            headroom.High,
            Unit.Ratio));
        return new FigureResult.Computed(
            headroom, Unit.Ratio, verdict, temperatureLeftOut, new Working([.. steps], known, Lines(i, inputs.ParallelCount, need.Current, convention), notes));
    }

    private static Verdict Judge(Interval headroom, double usedOfRating, bool hasGuideline, bool leavesStressOut)
    {
        if (VerdictLines.IsBelow(1, usedOfRating) || (!hasGuideline && VerdictLines.IsBelow(headroom.Nominal, VerdictLines.Headroom)))
            return Verdict.OverRating;
        if (VerdictLines.IsBelow(headroom.Nominal, VerdictLines.Headroom))
            return Verdict.OverGuideline;
        if (VerdictLines.IsBelow(headroom.Low, VerdictLines.Headroom))
            return Verdict.Thin;
        return !VerdictLines.IsBelow(headroom.Low, VerdictLines.AmpleHeadroom) && !leavesStressOut ? Verdict.Ample : Verdict.Adequate;
    }

    private static Interval? Take(
        Given? given, string symbol, string name, Unit unit, string code, string words, List<WorkingInput> known, List<MissingInput> missing)
    {
        if (given is null)
        {
            missing.Add(new MissingInput(code, words));
            return null;
        }

        known.Add(new WorkingInput(
            symbol, name, given.Interval.Low, given.Interval.Nominal, given.Interval.High, unit, given.Evidence, given.Source));
        if (given.Interval.IsPositive)
            return given.Interval;
        missing.Add(new MissingInput(code, words + " above zero"));
        return null;
    }

    private static (Interval Factor, string? Convention) Derating(Inputs inputs, List<WorkingInput> known, List<string> notes)
    {
        if (inputs.Derating is { } given)
        {
            known.Add(new WorkingInput(
                "k_derating", "derating", given.Interval.Low, given.Interval.Nominal, given.Interval.High, Unit.Ratio, given.Evidence, given.Source));
            return (given.Interval, "the derating given for this fuse");
        }

        if (FuseConvention.For(inputs.FunctionClass) is { } convention)
        {
            known.Add(new WorkingInput(
                "k_derating", "derating", convention.Derating, convention.Derating, convention.Derating, Unit.Ratio, null, convention.Name + ", editable"));
            return (Interval.Exactly(convention.Derating), convention.Name);
        }

        notes.Add("The style of the fuse is not recorded, so no derating convention applies: the line is the rating alone.");
        return (Interval.Exactly(1), null);
    }

    private static (Interval? Factor, bool LeftOut) TemperatureFactor(Inputs inputs, List<WorkingInput> known, List<MissingInput> missing, List<string> notes)
    {
        if (inputs.AmbientTemperature is { } ambient)
            known.Add(new WorkingInput(
                "T", "ambient temperature", ambient.Interval.Low, ambient.Interval.Nominal, ambient.Interval.High, Unit.DegreeCelsius, ambient.Evidence, ambient.Source));
        if (inputs.AmbientTemperature is { Interval.High: <= ReferenceTemperatureDegC })
            return (Interval.Exactly(1), false);
        if (inputs.AmbientTemperature is null || inputs.TemperatureSlope is not { } slope)
        {
            notes.Add(inputs.AmbientTemperature is null
                ? "The temperature around the fuse is not recorded; a warm fuse carries less. Static only."
                : "How fast this fuse loses current with temperature is not recorded. Static only.");
            return (Interval.Exactly(1), true);
        }

        known.Add(new WorkingInput(
            "s", "temperature slope", slope.Interval.Low, slope.Interval.Nominal, slope.Interval.High, Unit.PerDegreeCelsius, slope.Evidence, slope.Source));
        var rise = inputs.AmbientTemperature.Interval;
        var factor = Interval.TryCreate(
            Factor(slope.Interval.High, rise.High), Factor(slope.Interval.Nominal, rise.Nominal), Factor(slope.Interval.Low, rise.Low));
        if (factor is { IsPositive: true })
            return (factor, false);
        missing.Add(new MissingInput("temperature_slope", "a temperature slope that leaves some current allowed at this temperature"));
        return (null, false);

        static double Factor(double slope, double temperature) => 1 - (slope * Math.Max(0, temperature - ReferenceTemperatureDegC));
    }

    private static (Interval Current, IReadOnlyList<WorkingStep> Steps)? NeededCurrent(Inputs inputs, List<WorkingInput> known, List<MissingInput> missing)
    {
        if (!inputs.HasRail)
        {
            missing.Add(new MissingInput("rail", "the rail the fuse sits in"));
            return null;
        }

        if (inputs.MaxCurrent is not null)
            return Take(inputs.MaxCurrent, "I_needed", "highest current of the rail", Unit.Ampere, "max_current", "the rail's highest current", known, missing) is { } current
                ? (current, [])
                : null;

        var power = Take(inputs.MaxPower, "P", "highest output power", Unit.Watt, "max_power", "the rail's highest power or current", known, missing);
        var voltage = Take(inputs.MinVoltage, "V_min", "lowest voltage of the rail", Unit.Volt, "min_voltage", "the rail's lowest voltage", known, missing);
        var efficiency = Take(inputs.Efficiency, "η", "efficiency", Unit.Ratio, "efficiency", "the efficiency from the rail to its output", known, missing);
        var factor = inputs.IsMains
            ? Take(inputs.PowerFactor, "λ", "power factor", Unit.Ratio, "power_factor", "the power factor of a mains rail", known, missing)
            : Interval.Exactly(1);
        if (power is not { } p || voltage is not { } v || efficiency is not { } e || factor is not { } pf)
            return null;
        if (Chain(e, v, pf) is not { IsPositive: true } divisor || Divide(p, divisor) is not { } needed)
        {
            missing.Add(new MissingInput("plausible_inputs", "inputs of a size that can be computed with"));
            return null;
        }

        var withFactor = inputs.IsMains;
        string Numbers(double watt, double eta, double volt, double lambda) =>
            $"{QuantityText.Of(watt, Unit.Watt)} / ({QuantityText.Number(eta)} × {QuantityText.Of(volt, Unit.Volt)}{(withFactor ? " × " + QuantityText.Number(lambda) : "")})";
        return (needed,
        [
            new WorkingStep(
                "I_needed",
                "current needed",
                withFactor ? "P / (η · V_min · λ)" : "P / (η · V_min)",
                Numbers(p.Nominal, e.Nominal, v.Nominal, pf.Nominal),
                Numbers(p.High, e.Low, v.Low, pf.Low),
                needed.Low,
                needed.Nominal,
                needed.High,
                Unit.Ampere),
        ]);
    }

    private static WorkingStep AllowedStep(Interval rated, int count, Interval sharing, Interval derating, Interval temperature, Interval allowed)
    {
        string Numbers(Func<Interval, double> end) =>
            Ampere(end(rated))
            + (count > 1 ? $" × {count} × {QuantityText.Number(end(sharing))}" : "")
            + $" × {QuantityText.Number(end(derating))}"
            + (temperature == Interval.Exactly(1) ? "" : $" × {QuantityText.Number(end(temperature))}");
        var formula = "I_rated" + (count > 1 ? " · n · k_share" : "") + " · k_derating" + (temperature == Interval.Exactly(1) ? "" : " · k_temp");
        return new WorkingStep(
            "I_allowed", "current allowed", formula, Numbers(x => x.Nominal), Numbers(x => x.Low), allowed.Low, allowed.Nominal, allowed.High, Unit.Ampere);
    }

    private static List<string> Lines(Interval rated, int count, Interval needed, string? convention) =>
    [
        convention is null
            ? "Line at 1.00: the rating alone."
            : $"Line at 1.00: {convention}.",
        $"Rating: {Ampere(needed.Nominal)} needed of {Ampere(rated.Nominal * count)} rated.",
        $"Ample from {QuantityText.TwoDecimals(VerdictLines.AmpleHeadroom)} on, a house rule.",
    ];

    private static string Ampere(double value) => QuantityText.Of(value, Unit.Ampere);

    private static Interval? Chain(params ReadOnlySpan<Interval> factors)
    {
        double low = 1, nominal = 1, high = 1;
        foreach (var factor in factors)
        {
            low *= factor.Low;
            nominal *= factor.Nominal;
            high *= factor.High;
        }

        return Interval.TryCreate(low, nominal, high);
    }

    private static Interval? Divide(Interval dividend, Interval divisor) =>
        Interval.TryCreate(dividend.Low / divisor.High, dividend.Nominal / divisor.Nominal, dividend.High / divisor.Low);
}
