using Catalogue.Domain.Components;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Rails;

namespace Catalogue.Domain.Figures;

/// <summary>How many times over a fuse can break the current that its rail may deliver into a short.</summary>
/// <remarks>
/// <para><c>ratio = I_break / I_short</c>; currents in ampere; 1.00 just breaks it. I_short is the rail's recorded prospective current; on a pack rail without one
/// <c>I_short = V_max / (S / P · R_cell + R_path)</c>, R_cell the internal resistance of one cell and R_path that of the path beside the cells, in ohm. A path taken as
/// zero gives the highest current. Neither is ever assumed.</para>
/// <para>Capacities of fuses side by side do not add: each may have to break the whole current. A capacity stated for ac does not count on dc. Source: definition;
/// the pack as a source with a resistance is a rough estimate.</para>
/// </remarks>
public static class BreakingCapacity
{
    /// <summary>The rule's code.</summary>
    public const string Rule = "breaking_capacity";

    /// <summary>Raised whenever the same inputs could give another result.</summary>
    public const int Version = 1;

    /// <summary>The facts the rule takes; each may be missing.</summary>
    public sealed record Inputs
    {
        /// <summary>What one fuse can break, in ampere.</summary>
        public Given? Capacity { get; init; }

        /// <summary>True where a capacity is recorded, but for ac, and the rail is dc.</summary>
        public bool IsForAcOnly { get; init; }

        /// <summary>How many fuses stand side by side, from 1.</summary>
        public int ParallelCount { get; init; } = 1;

        /// <summary>True when the fuse has a rail.</summary>
        public bool HasRail { get; init; }

        /// <summary>What the rail can deliver into a short, in ampere, where it is recorded itself.</summary>
        public Given? Prospective { get; init; }

        /// <summary>How many lines of cells feed the rail; the sum is done for one.</summary>
        public int CellLines { get; init; }

        /// <summary>Cells in series, from 1.</summary>
        public int CellsInSeries { get; init; } = 1;

        /// <summary>Cells in parallel, from 1.</summary>
        public int CellsInParallel { get; init; } = 1;

        /// <summary>Internal resistance of one cell, in ohm.</summary>
        public Given? CellResistance { get; init; }

        /// <summary>Resistance of the path beside the cells, in ohm; may be zero.</summary>
        public Given? PathResistance { get; init; }

        /// <summary>The pack's full voltage, in volt.</summary>
        public Given? MaxVoltage { get; init; }

        /// <summary>The facts of a part.</summary>
        public static Inputs Of(PartFacts part)
        {
            ArgumentNullException.ThrowIfNull(part);
            var isMains = part.Rail?.IsMains == true;
            var capacity = part.Best(RatingKind.BreakingCurrent, rating => isMains || !rating.IsForAc);
            var cells = part.Rail?.Cells ?? [];
            return new Inputs
            {
                Capacity = capacity,
                IsForAcOnly = capacity is null && part.Best(RatingKind.BreakingCurrent) is not null,
                ParallelCount = part.Component.ParallelCount,
                HasRail = part.Rail is not null,
                Prospective = part.Rail?.Of(RailQuantityKind.ProspectiveCurrent),
                CellLines = cells.Count,
                CellsInSeries = cells is [var first, ..] ? first.Component.SeriesCount : 1,
                CellsInParallel = cells is [var one, ..] ? one.Component.ParallelCount : 1,
                CellResistance = cells is [var cell, ..] ? cell.Best(RatingKind.CellResistance) : null,
                PathResistance = part.Rail?.Of(RailQuantityKind.PathResistance),
                MaxVoltage = part.Rail?.Of(RailQuantityKind.MaxVoltage),
            };
        }
    }

    /// <summary>True for a fuse whose breaking capacity is recorded, and for one on a pack whose cells' resistance is: elsewhere there is nothing to compute it from.</summary>
    public static bool AppliesTo(PartFacts part)
    {
        ArgumentNullException.ThrowIfNull(part);
        return part.Is(FunctionClass.Fuse)
            && (part.Best(RatingKind.BreakingCurrent) is not null || part.Rail?.Cells.Any(cell => cell.Best(RatingKind.CellResistance) is not null) == true);
    }

    /// <summary>Computes the ratio, above zero, or says what is missing.</summary>
    public static FigureResult Compute(Inputs inputs)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        ArgumentOutOfRangeException.ThrowIfLessThan(inputs.ParallelCount, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(inputs.CellsInSeries, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(inputs.CellsInParallel, 1);
        var sheet = new Sheet();
        var capacity = sheet.Need(
            inputs.Capacity,
            "I_break",
            "breaking capacity of one fuse",
            Unit.Ampere,
            "breaking_current",
            inputs.IsForAcOnly ? "the fuse's breaking capacity for dc; one stated for ac does not count there" : "the fuse's breaking capacity");
        var prospective = Prospective(sheet, inputs);
        var ratio = sheet.Step("ratio", "breaking capacity over prospective current", Unit.Ratio, capacity / prospective);
        sheet.Line(() => "Line at 1.00: the rating alone.");
        sheet.Line(() => $"Rating: {QuantityText.Of(prospective.Nominal, Unit.Ampere)} to break of {QuantityText.Of(capacity.Nominal, Unit.Ampere)} rated.");
        sheet.Note("A breaking capacity holds up to the fuse's rated voltage only.");
        if (inputs.ParallelCount > 1)
            sheet.Note("Fuses side by side do not add up here: each may have to break the whole current.");
        return sheet.Finish(ratio, Unit.Ratio, new FigureLines(true, 1, null, null));
    }

    private static Term Prospective(Sheet sheet, Inputs inputs)
    {
        if (!inputs.HasRail)
        {
            sheet.Miss("rail", "the rail the fuse sits in");
            return Term.Number(1);
        }

        if (inputs.Prospective is not null || inputs.CellLines == 0)
            return sheet.Need(inputs.Prospective, "I_short", "prospective short-circuit current of the rail", Unit.Ampere, "prospective_current", "the rail's prospective short-circuit current");
        if (inputs.CellLines > 1)
            sheet.Miss("prospective_current", "the rail's prospective short-circuit current: with several lines of cells it is not computed");
        var series = sheet.Set(Interval.Exactly(inputs.CellsInSeries), "S", "cells in series", Unit.Ratio, "arrangement as recorded");
        var parallel = sheet.Set(Interval.Exactly(inputs.CellsInParallel), "P", "cells in parallel", Unit.Ratio, "arrangement as recorded");
        var cell = sheet.Need(inputs.CellResistance, "R_cell", "internal resistance of one cell", Unit.Ohm, "cell_resistance", "the internal resistance of one cell");
        var path = sheet.Need(inputs.PathResistance, "R_path", "resistance of the path beside the cells", Unit.Ohm, "path_resistance", "the resistance of the path beside the cells; zero makes the current an upper one", mayBeZero: true);
        var voltage = sheet.Need(inputs.MaxVoltage, "V_max", "full voltage of the pack", Unit.Volt, "max_voltage", "the pack's highest voltage");
        sheet.Note("The prospective current is a rough estimate: cells and wiring have inductance, and resistance moves with age, charge and temperature.");
        return sheet.Step("I_short", "prospective short-circuit current", Unit.Ampere, voltage / ((series / parallel * cell) + path));
    }
}
