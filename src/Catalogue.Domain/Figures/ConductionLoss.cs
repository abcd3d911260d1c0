using Catalogue.Domain.Components;
using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Figures;

/// <summary>What the switches or rectifiers of a place turn into heat while they conduct. Switching loss is not part of it.</summary>
/// <remarks>
/// <para>Switches: <c>P = I² · R_on · k_T / n</c> with even sharing. With sharing k_share the part that carries most takes
/// <c>P_each = (I / (n · k_share))² · R_on · k_T</c>, and the figure is <c>P = n · P_each</c>, an upper bound. R_on is the on-resistance of one
/// part at 25 °C, k_T its rise with temperature.</para>
/// <para>Rectifiers: <c>P = V_f · I_mean</c>, both diodes of a bridge that conduct at once: <c>2 · V_f · I_mean</c>.</para>
/// <para>In watt. Source: physics. Switching loss cannot be computed from a teardown and stays unknown.</para>
/// </remarks>
public static class ConductionLoss
{
    /// <summary>The rule's code.</summary>
    public const string Rule = "conduction_loss";

    /// <summary>Raised whenever the same inputs could give another result.</summary>
    public const int Version = 2;

    /// <summary>The facts the rule takes; each may be missing.</summary>
    public sealed record Inputs : PlaceLoad
    {
        /// <summary>True for a rectifier, which loses by its forward voltage.</summary>
        public bool IsRectifier { get; init; }

        /// <summary>On-resistance of one part at 25 °C, in ohm.</summary>
        public Given? OnResistance { get; init; }

        /// <summary>On-resistance hot, divided by that at 25 °C; from 1.</summary>
        public Given? TemperatureFactor { get; init; }

        /// <summary>Forward voltage, in volt.</summary>
        public Given? ForwardVoltage { get; init; }

        /// <summary>How many share the current, from 1.</summary>
        public int ParallelCount { get; init; } = 1;

        /// <summary>How evenly they share it, 0 to 1; needed for two and more switches.</summary>
        public Given? Sharing { get; init; }

        /// <summary>The facts of a part.</summary>
        public static Inputs Of(PartFacts part)
        {
            ArgumentNullException.ThrowIfNull(part);
            return (Inputs)new Inputs
            {
                IsRectifier = part.Is(FunctionClass.Rectifier),
                OnResistance = part.Best(RatingKind.OnResistance),
                TemperatureFactor = part.Best(RatingKind.TemperatureFactor),
                ForwardVoltage = part.Best(RatingKind.ForwardVoltage),
                ParallelCount = part.Component.ParallelCount,
                Sharing = part.Best(RatingKind.CurrentSharing),
            }.With(part);
        }
    }

    /// <summary>True for the classes of part that it is computed for. A bipolar transistor has no on-resistance, and its saturation voltage hangs on the base drive.</summary>
    public static bool AppliesTo(FunctionClass functionClass) =>
        (functionClass.Is(FunctionClass.Switch) && functionClass is not FunctionClass.BipolarTransistor) || functionClass.Is(FunctionClass.Rectifier);

    /// <summary>Computes the loss of the place, in watt.</summary>
    public static FigureResult Compute(Inputs inputs)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        var sheet = new Sheet();
        var (each, count) = Each(sheet, inputs);
        var loss = sheet.Step("P", "conduction loss", Unit.Watt, count is null ? each : count * each);
        sheet.Line(() => "Held against no line: a loss is a fact to weigh with the cooling.");
        sheet.Note("Conduction only; switching loss cannot be computed from a teardown.");
        return sheet.Finish(loss, Unit.Watt, FigureLines.None(moreIsBetter: false));
    }

    /// <summary>The loss of the part that carries most, in watt, and how many there are, or null for one.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="inputs">The inputs.</param>
    /// <param name="at25">True for the loss a switch would have at 25 °C, without its temperature factor.</param>
    internal static (Term Each, Term? Count) Each(Sheet sheet, Inputs inputs, bool at25 = false)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(inputs.ParallelCount, 1);
        if (inputs.IsRectifier)
        {
            var forward = sheet.Need(inputs.ForwardVoltage, "V_f", "forward voltage", Unit.Volt, "forward_voltage", "the rectifier's forward voltage");
            var mean = inputs.Through(sheet, "rectifier");
            return (inputs.Position is CircuitPosition.MainsBridge or CircuitPosition.BridgeSecondary ? Term.Number(2) * forward * mean : forward * mean, null);
        }

        var resistance = sheet.Need(inputs.OnResistance, "R_on", "on-resistance of one part at 25 °C", Unit.Ohm, "on_resistance", "the on-resistance of one switch");
        if (!at25)
            resistance *= sheet.Need(inputs.TemperatureFactor, "k_T", "temperature factor", Unit.Ratio, "temperature_factor", "how much the on-resistance rises when hot");
        var current = inputs.Through(sheet, "switch");
        if (inputs.ParallelCount == 1)
            return (Term.Square(current) * resistance, null);
        var count = sheet.Set(Interval.Exactly(inputs.ParallelCount), "n", "in parallel", Unit.Ratio, "arrangement as recorded");
        var sharing = sheet.Need(inputs.Sharing, "k_share", "current sharing", Unit.Ratio, "current_sharing", $"how evenly the {inputs.ParallelCount} switches share the current");
        return (sheet.Step("P_each", "loss of the part that carries most", Unit.Watt, Term.Square(current / (count * sharing)) * resistance), count);
    }
}
