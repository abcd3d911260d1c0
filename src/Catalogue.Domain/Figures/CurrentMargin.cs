using Catalogue.Domain.Components;
using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Figures;

/// <summary>What is left of the rated current of a place at the current through it, as a share of the rating.</summary>
/// <remarks>
/// <para><c>margin = 1 − I / (I_rated · n · k_share)</c>; <see cref="PlaceLoad"/> says how I comes about. Rectifiers are rated for the mean
/// current, all else for the rms. Currents in ampere.</para>
/// <para>0 is the rating itself; the guideline allows a share k of it and so lies at 1 − k. Source: definition; guidelines stand in
/// <see cref="LineTable"/>.</para>
/// </remarks>
public static class CurrentMargin
{
    /// <summary>The rule's code.</summary>
    public const string Rule = "current_margin";

    /// <summary>Raised whenever the same inputs could give another result.</summary>
    public const int Version = 2;

    /// <summary>The facts the rule takes; each may be missing.</summary>
    public sealed record Inputs : PlaceLoad
    {
        /// <summary>The class of the part.</summary>
        public required FunctionClass FunctionClass { get; init; }

        /// <summary>Rated current of one part, in ampere.</summary>
        public Given? RatedCurrent { get; init; }

        /// <summary>How many share the current, from 1.</summary>
        public int ParallelCount { get; init; } = 1;

        /// <summary>How evenly they share it, 0 to 1; needed for two and more.</summary>
        public Given? Sharing { get; init; }

        /// <summary>The facts of a part.</summary>
        public static Inputs Of(PartFacts part)
        {
            ArgumentNullException.ThrowIfNull(part);
            return (Inputs)new Inputs
            {
                FunctionClass = part.Component.FunctionClass ?? FunctionClass.OtherPart,
                RatedCurrent = part.Best(RatingKind.RatedCurrent),
                ParallelCount = part.Component.ParallelCount,
                Sharing = part.Best(RatingKind.CurrentSharing),
            }.With(part);
        }
    }

    /// <summary>True for the classes of part that it is computed for; fuses have their headroom.</summary>
    public static bool AppliesTo(FunctionClass functionClass) =>
        functionClass.Is(FunctionClass.Switch) || functionClass.Is(FunctionClass.Rectifier) || functionClass.Is(FunctionClass.Connector);

    /// <summary>Computes the margin, a ratio of at most 1; below 0 the rating is exceeded.</summary>
    public static FigureResult Compute(Inputs inputs, LineTable lines)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        ArgumentNullException.ThrowIfNull(lines);
        ArgumentOutOfRangeException.ThrowIfLessThan(inputs.ParallelCount, 1);
        var sheet = new Sheet();
        var part = inputs.FunctionClass.Word();
        var (name, words) = inputs.FunctionClass is FunctionClass.BipolarTransistor
            ? ($"rated collector current, I_C, of one {part}", $"the {part}'s rated collector current, I_C")
            : ($"rated current of one {part}", $"the {part}'s rated current");
        var rated = sheet.Need(inputs.RatedCurrent, "I_rated", name, Unit.Ampere, "rated_current", words);
        var together = rated;
        if (inputs.ParallelCount > 1)
        {
            together *= sheet.Set(Interval.Exactly(inputs.ParallelCount), "n", "in parallel", Unit.Ratio, "arrangement as recorded");
            together *= sheet.Need(inputs.Sharing, "k_share", "current sharing", Unit.Ratio, "current_sharing", $"how evenly the {inputs.ParallelCount} share the current");
        }

        var current = inputs.Through(sheet, part);
        var margin = sheet.Step("margin", "current margin", Unit.Ratio, Term.Number(1) - (current / together));
        var (guideline, whyNot) = lines.Guideline(inputs.FunctionClass, StressKind.Current);
        var held = MarginLines.On(sheet, guideline, whyNot, lines.AmpleCurrent, current, together, Unit.Ampere);
        sheet.LeaveOut(inputs.FunctionClass.Is(FunctionClass.Connector)
            ? "The temperature of the contact is not part of this figure."
            : "A rated current holds at a case temperature that is not part of this figure.");
        return sheet.Finish(margin, Unit.Ratio, held);
    }
}
