using Catalogue.Domain.Components;
using Catalogue.Domain.Packs;
using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Figures;

/// <summary>The energy of the cells of a pack, from their arrangement and capacity.</summary>
/// <remarks>
/// <c>E = S · P · Q_cell · v</c>, in watt-hour; S in series, P in parallel, Q_cell the capacity of one cell in ampere-hour, v its nominal voltage.
/// The voltage is the cell's own where recorded, else what is typical of its chemistry, said so. Source: definition.
/// </remarks>
public static class PackEnergy
{
    /// <summary>The rule's code.</summary>
    public const string Rule = "pack_energy";

    /// <summary>Raised whenever the same inputs could give another result.</summary>
    public const int Version = 1;

    /// <summary>The facts the rule takes; each may be missing.</summary>
    /// <param name="SeriesCount">Cells in series, from 1.</param>
    /// <param name="ParallelCount">Cells in parallel, from 1.</param>
    /// <param name="Capacity">Of one cell, in ampere-hour.</param>
    /// <param name="Voltage">Nominal, of one cell, in volt.</param>
    public sealed record Inputs(int SeriesCount, int ParallelCount, Given? Capacity, Given? Voltage)
    {
        /// <summary>The facts of a part.</summary>
        public static Inputs Of(PartFacts part)
        {
            ArgumentNullException.ThrowIfNull(part);
            return new Inputs(
                part.Component.SeriesCount, part.Component.ParallelCount, part.Best(RatingKind.CellCapacity), part.Best(RatingKind.CellVoltage) ?? DerivedRails.TypicalCell(part.Chemistry)?.Nominal);
        }
    }

    /// <summary>Computes the energy, in watt-hour.</summary>
    public static FigureResult Compute(Inputs inputs)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        ArgumentOutOfRangeException.ThrowIfLessThan(inputs.SeriesCount, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(inputs.ParallelCount, 1);
        var sheet = new Sheet();
        var series = sheet.Set(Interval.Exactly(inputs.SeriesCount), "S", "cells in series", Unit.Ratio, "arrangement as recorded");
        var parallel = sheet.Set(Interval.Exactly(inputs.ParallelCount), "P", "cells in parallel", Unit.Ratio, "arrangement as recorded");
        var capacity = sheet.Need(inputs.Capacity, "Q_cell", "capacity of one cell", Unit.AmpereHour, "cell_capacity", "the capacity of one cell");
        var voltage = sheet.Need(inputs.Voltage, "v", "nominal voltage of one cell", Unit.Volt, "cell_voltage", "the cells' nominal voltage or their chemistry");
        var energy = sheet.Step("E", "pack energy", Unit.WattHour, series * parallel * capacity * voltage);
        if (sheet.IsComplete && inputs.SeriesCount > 1)
            sheet.Note($"The same cells counted side by side are {QuantityText.Of(inputs.SeriesCount * inputs.ParallelCount * capacity.Nominal, Unit.AmpereHour)} at one cell's voltage, and {QuantityText.Of(inputs.ParallelCount * capacity.Nominal, Unit.AmpereHour)} at the pack's: only watt-hours compare.");
        if (sheet.IsComplete && TransportScreen.Of(energy.Interval) is Reckoning<TransportScreen>.Done { Value: var band })
            sheet.Note($"Transport line: {TransportScreen.Words(band.Band)}{(band.HighestBand == band.Band ? "" : ", at the high end " + TransportScreen.Words(band.HighestBand))}. {TransportScreen.Caution}");
        sheet.Line(() => "Held against no line: what was claimed and measured stands beside it.");
        return sheet.Finish(energy, Unit.WattHour, FigureLines.None(moreIsBetter: true));
    }
}
