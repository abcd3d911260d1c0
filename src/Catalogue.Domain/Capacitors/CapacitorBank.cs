using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Capacitors;

/// <summary>Equal capacitors, n in parallel by m in series.</summary>
/// <remarks>
/// <c>C = n / m · C_one</c>; each of m in series sees <c>V / m</c> when all are alike, and in the worst case of their tolerance
/// <c>V / (1 + (m − 1) · C_low / C_high)</c>. Source: physics, for charging up; in steady state leakage and balancing resistors decide.
/// </remarks>
/// <param name="Capacitance">Of the whole, in farad.</param>
/// <param name="VoltageOfPart">Across one part, in volt.</param>
/// <param name="Stored">Of the whole.</param>
public sealed record CapacitorBank(Interval Capacitance, Interval VoltageOfPart, StoredCharge Stored)
{
    /// <summary>Computes the bank.</summary>
    /// <param name="capacitance">Of one part with its tolerance, in farad.</param>
    /// <param name="parallel">1 to 10000.</param>
    /// <param name="series">1 to 10000.</param>
    /// <param name="voltage">Across the whole, in volt.</param>
    public static Reckoning<CapacitorBank> Of(Interval? capacitance, int parallel, int series, Interval? voltage) => new InputCheck()
        .Positive("capacitance", capacitance, Unit.Farad)
        .Count("parallel", parallel)
        .Count("series", series)
        .Positive("voltage", voltage, Unit.Volt)
        .Reckon(() => (Whole: capacitance!.Value * Interval.Exactly(parallel) / Interval.Exactly(series), Part: OfPart(voltage!.Value, series, capacitance.Value)))
        .Then(bank => StoredCharge.Of(bank.Whole, voltage).Then(stored => new Reckoning<CapacitorBank>.Done(new CapacitorBank(bank.Whole, bank.Part, stored))));

    private static Interval OfPart(Interval voltage, int series, Interval capacitance)
    {
        var spread = capacitance.High / capacitance.Low;
        var others = series - 1;
        return Interval.Create(voltage.Low / (1 + (others * spread)), voltage.Nominal / series, voltage.High / (1 + (others / spread)));
    }
}
