using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Packs;

/// <summary>A rough estimate of what a pack delivers into a short, to hold against a fuse's breaking capacity.</summary>
/// <remarks><c>I = V / (S / P · R_cell + R_wiring)</c>, in ampere. An estimate: cells and wiring have inductance, and resistance moves with age and temperature.</remarks>
public static class ShortCircuitCurrent
{
    /// <summary>Computes the estimate.</summary>
    /// <param name="series">Cells in series, 1 to 10000.</param>
    /// <param name="parallel">Cells in parallel, 1 to 10000.</param>
    /// <param name="packVoltage">In volt; the full voltage gives the highest current.</param>
    /// <param name="cellResistance">Of one cell, in ohm.</param>
    /// <param name="wiringResistance">In ohm; zero gives the highest current. Null is refused: unknown is not zero.</param>
    public static Reckoning<Interval> Estimate(int series, int parallel, Interval? packVoltage, Interval? cellResistance, Interval? wiringResistance) => new InputCheck()
        .Count("series", series)
        .Count("parallel", parallel)
        .Positive("pack_voltage", packVoltage, Unit.Volt)
        .Positive("cell_resistance", cellResistance, Unit.Ohm)
        .NotNegative("wiring_resistance", wiringResistance, Unit.Ohm)
        .Reckon((up, down) => up(packVoltage!.Value) / (((double)series / parallel * down(cellResistance!.Value)) + down(wiringResistance!.Value)));
}
