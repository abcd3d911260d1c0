using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Packs;

/// <summary>Current and loss of a balancing resistor across one cell.</summary>
/// <remarks><c>I = v / R</c>, <c>P = v² / R</c>. Source: physics.</remarks>
/// <param name="Current">In ampere.</param>
/// <param name="Power">In watt.</param>
public sealed record BalanceBleed(Interval Current, Interval Power)
{
    /// <summary>Computes both.</summary>
    /// <param name="cellVoltage">In volt.</param>
    /// <param name="resistance">In ohm.</param>
    public static Reckoning<BalanceBleed> Of(Interval? cellVoltage, Interval? resistance) => new InputCheck()
        .Positive("cell_voltage", cellVoltage, Unit.Volt)
        .Positive("resistance", resistance, Unit.Ohm)
        .Reckon(() => new BalanceBleed(
            cellVoltage!.Value / resistance!.Value, cellVoltage.Value * cellVoltage.Value / resistance.Value));
}
