using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Packs;

/// <summary>Voltage window, capacity and energy of cells in series and parallel.</summary>
/// <remarks>
/// <para><c>V_nom = S · v_nom</c>, <c>V_max = S · v_full</c>, <c>V_min = S · v_end</c>, <c>Q = P · q</c>, <c>E = S · P · q · v_nom</c></para>
/// <para>S cells in series, P in parallel; v in volt and q in ampere-hour of one cell; E in watt-hour. Source: definitions.</para>
/// </remarks>
public static class PackOfCells
{
    /// <summary>The cells of a pack.</summary>
    /// <param name="Series">Cells in series, 1 to 10000.</param>
    /// <param name="Parallel">Cells in parallel, 1 to 10000.</param>
    /// <param name="CellCapacity">Capacity of one cell, in ampere-hour; null where not known.</param>
    /// <param name="NominalVoltage">Nominal voltage of one cell, in volt.</param>
    /// <param name="FullVoltage">Voltage of one full cell, in volt.</param>
    /// <param name="EndVoltage">Voltage of one cell at the end of discharge, in volt.</param>
    public sealed record Cells(int Series, int Parallel, Interval? CellCapacity, Interval? NominalVoltage, Interval? FullVoltage, Interval? EndVoltage)
    {
        /// <summary>Cells with the typical voltages of a chemistry; a row that may not be a default leaves them unknown.</summary>
        public static Cells Of(CellChemistry chemistry, int series, int parallel, Interval? cellCapacity)
        {
            ArgumentNullException.ThrowIfNull(chemistry);
            return chemistry.MayBeDefault
                ? new Cells(series, parallel, cellCapacity, chemistry.Nominal, chemistry.Full, chemistry.End)
                : new Cells(series, parallel, cellCapacity, null, null, null);
        }
    }

    /// <summary>The pack.</summary>
    /// <param name="NominalVoltage">In volt.</param>
    /// <param name="FullVoltage">In volt.</param>
    /// <param name="EndVoltage">At the end of discharge, in volt.</param>
    /// <param name="Capacity">In ampere-hour at pack voltage.</param>
    /// <param name="Energy">In watt-hour at nominal voltage.</param>
    public sealed record Pack(Interval NominalVoltage, Interval FullVoltage, Interval EndVoltage, Interval Capacity, Interval Energy);

    /// <summary>Computes the pack; refused where an input is missing or absurd, or a cell's voltages are out of order (end ≤ nominal ≤ full).</summary>
    public static Reckoning<Pack> Compute(Cells cells)
    {
        ArgumentNullException.ThrowIfNull(cells);
        return new InputCheck()
            .Count("series", cells.Series)
            .Count("parallel", cells.Parallel)
            .Positive("cell_capacity", cells.CellCapacity, Unit.AmpereHour)
            .Positive("cell_nominal_voltage", cells.NominalVoltage, Unit.Volt)
            .Positive("cell_full_voltage", cells.FullVoltage, Unit.Volt)
            .Positive("cell_end_voltage", cells.EndVoltage, Unit.Volt)
            .Require(
                () => cells.EndVoltage!.Value.Nominal <= cells.NominalVoltage!.Value.Nominal && cells.NominalVoltage.Value.Nominal <= cells.FullVoltage!.Value.Nominal,
                "cell_nominal_voltage",
                "cell nominal voltage must lie between the end of discharge and full")
            .Reckon(() =>
            {
                var (series, parallel) = (Interval.Exactly(cells.Series), Interval.Exactly(cells.Parallel));
                var (nominal, capacity) = (series * cells.NominalVoltage!.Value, parallel * cells.CellCapacity!.Value);
                return new Pack(nominal, series * cells.FullVoltage!.Value, series * cells.EndVoltage!.Value, capacity, nominal * capacity);
            });
    }

    /// <summary>Energy that reaches the output, in watt-hour: <c>E · usable fraction · efficiency</c>.</summary>
    /// <param name="energy">Energy of the pack, in watt-hour.</param>
    /// <param name="usableFraction">Share of it that is drawn, above 0 to 1.</param>
    /// <param name="efficiency">Efficiency to the output, above 0 to 1; measured or given, never assumed.</param>
    public static Reckoning<Interval> Usable(Interval? energy, Interval? usableFraction, Interval? efficiency) => new InputCheck()
        .Positive("energy", energy, Unit.WattHour)
        .Share("usable_fraction", usableFraction)
        .Share("efficiency", efficiency)
        .Reckon(() => energy!.Value * usableFraction!.Value * efficiency!.Value);

    /// <summary>Charge at an output voltage, in ampere-hour: <c>E_usable / V_out</c>.</summary>
    /// <param name="usableEnergy">In watt-hour.</param>
    /// <param name="outputVoltage">In volt.</param>
    public static Reckoning<Interval> OutputCharge(Interval? usableEnergy, Interval? outputVoltage) => new InputCheck()
        .Positive("usable_energy", usableEnergy, Unit.WattHour)
        .Positive("output_voltage", outputVoltage, Unit.Volt)
        .Reckon(() => usableEnergy!.Value / outputVoltage!.Value);
}
