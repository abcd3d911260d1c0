using Catalogue.Domain.Components;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Rails;

namespace Catalogue.Domain.Figures;

/// <summary>What is left of a part's rated voltage at the highest voltage across it, as a share of the rating.</summary>
/// <remarks>
/// <para><c>margin = 1 − V_stress / (m · V_rated)</c>, m parts in series that share the voltage; <see cref="VoltageStress"/> says how V_stress
/// comes about. 0 is the rating itself; the guideline allows a share k of it and so lies at 1 − k.</para>
/// <para>An ac rating is held against the rms voltage of mains, a dc rating against dc or peak; the one is never taken for the other: an ac
/// rating of a film part is not its dc rating divided by √2. A bipolar transistor is held to its V_CEO, the harshest of its ratings. Source: definition; guidelines stand in <see cref="LineTable"/>.</para>
/// </remarks>
public static class VoltageMargin
{
    /// <summary>The rule's code.</summary>
    public const string Rule = "voltage_margin";

    /// <summary>Raised whenever the same inputs could give another result.</summary>
    public const int Version = 1;

    /// <summary>The facts the rule takes; each may be missing.</summary>
    public sealed record Inputs
    {
        /// <summary>The class of the part.</summary>
        public required FunctionClass FunctionClass { get; init; }

        /// <summary>Rated voltage of one part, in volt.</summary>
        public Given? RatedVoltage { get; init; }

        /// <summary>True when that is an ac rating, in volt rms.</summary>
        public bool IsAcRating { get; init; }

        /// <summary>How many share the voltage, from 1.</summary>
        public int SeriesCount { get; init; } = 1;

        /// <summary>Temperature around the part, in °C; some guidelines fall with it.</summary>
        public Given? AmbientTemperature { get; init; }

        /// <summary>The voltage across the place.</summary>
        public required VoltageStress Stress { get; init; }

        /// <summary>The facts of a part.</summary>
        public static Inputs Of(PartFacts part)
        {
            ArgumentNullException.ThrowIfNull(part);
            var functionClass = part.Component.FunctionClass ?? FunctionClass.OtherPart;
            var switches = functionClass.Is(FunctionClass.Switch) || functionClass.Is(FunctionClass.Rectifier);
            var wantsAc = part.Rail?.IsMains == true && !switches && part.Component.CircuitPosition is not (CircuitPosition.MainsBridge or CircuitPosition.MainsHalfWave);
            return new Inputs
            {
                FunctionClass = functionClass,
                RatedVoltage = wantsAc
                    ? part.Best(RatingKind.RatedVoltageAc) ?? part.Best(RatingKind.RatedVoltage, rating => rating.IsForAc)
                    : part.Best(RatingKind.RatedVoltage, rating => !rating.IsForAc),
                IsAcRating = wantsAc,
                SeriesCount = part.Component.SeriesCount,
                AmbientTemperature = part.Best(RatingKind.AmbientTemperature),
                Stress = new VoltageStress
                {
                    Part = Noun(functionClass),
                    Position = part.Component.CircuitPosition,
                    NeedsPosition = switches,
                    Rings = switches && part.Component.CircuitPosition is not (CircuitPosition.MainsBridge or CircuitPosition.MainsHalfWave),
                    HasRail = part.Rail is not null,
                    IsMains = part.Rail?.IsMains == true,
                    MaxVoltage = part.Rail?.Of(RailQuantityKind.MaxVoltage),
                    PeakVoltage = part.Best(RatingKind.PeakVoltage),
                    RippleVoltage = part.Best(RatingKind.RippleVoltage),
                    SpikeVoltage = part.Best(RatingKind.SpikeVoltage),
                    OutputVoltage = part.Best(RatingKind.OutputVoltage),
                    ForwardVoltage = part.Best(RatingKind.ForwardVoltage),
                    TurnsRatio = part.Best(RatingKind.TurnsRatio),
                },
            };
        }
    }

    /// <summary>True for the classes of part that it is computed for.</summary>
    public static bool AppliesTo(FunctionClass functionClass) =>
        functionClass.Is(FunctionClass.Switch) || functionClass.Is(FunctionClass.Rectifier) || functionClass.Is(FunctionClass.Capacitor)
        || functionClass.Is(FunctionClass.Fuse) || functionClass.Is(FunctionClass.Connector);

    /// <summary>Computes the margin, a ratio of at most 1; below 0 the rating is exceeded.</summary>
    public static FigureResult Compute(Inputs inputs, LineTable lines)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        ArgumentNullException.ThrowIfNull(lines);
        ArgumentOutOfRangeException.ThrowIfLessThan(inputs.SeriesCount, 1);
        var sheet = new Sheet();
        var (kind, needed) = inputs switch
        {
            { IsAcRating: true } => ("ac voltage", $"the {inputs.Stress.Part}'s ac voltage rating; a dc rating does not count on mains"),
            { FunctionClass: FunctionClass.BipolarTransistor } => ("collector-emitter voltage, V_CEO,", $"the {inputs.Stress.Part}'s collector-emitter voltage rating, V_CEO"),
            _ => ("voltage", $"the {inputs.Stress.Part}'s dc voltage rating"),
        };
        var rated = sheet.Need(inputs.RatedVoltage, "V_rated", $"rated {kind} of one {inputs.Stress.Part}", Unit.Volt, inputs.IsAcRating ? "rated_voltage_ac" : "rated_voltage", needed);
        var together = inputs.SeriesCount == 1 ? rated : rated * sheet.Set(Interval.Exactly(inputs.SeriesCount), "m", "in series", Unit.Ratio, "arrangement as recorded");
        if (inputs.SeriesCount > 1)
            sheet.LeaveOut("How evenly the parts in series share the voltage is not known; even sharing is taken.");
        var stress = inputs.Stress.On(sheet, inputs.IsAcRating);
        var isCapacitor = inputs.FunctionClass.Is(FunctionClass.Capacitor);
        if (isCapacitor && !inputs.IsAcRating && inputs.Stress is { RippleVoltage: null, PeakVoltage: null })
            sheet.LeaveOut("The ripple on the voltage is not recorded.");
        var margin = sheet.Step("margin", "voltage margin", Unit.Ratio, Term.Number(1) - (stress / together));

        var (guideline, whyNot) = inputs.IsAcRating || inputs.FunctionClass.Is(FunctionClass.Fuse)
            ? (null, "the marked voltage already is the limit")
            : lines.Guideline(inputs.FunctionClass, StressKind.Voltage, inputs.AmbientTemperature);
        return sheet.Finish(margin, Unit.Ratio, MarginLines.On(sheet, guideline, whyNot, lines.AmpleVoltage, stress, together, Unit.Volt));
    }

    private static string Noun(FunctionClass functionClass) =>
        functionClass.Is(FunctionClass.Fuse) ? "fuse"
        : functionClass.Is(FunctionClass.Capacitor) ? "capacitor"
        : functionClass.Word();
}
