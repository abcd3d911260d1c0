using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Capacitors;

/// <summary>What a charged capacitor holds.</summary>
/// <remarks>
/// <c>E = ½ · C · V²</c>, <c>Q = C · V</c>. Source: physics. A class 2 ceramic holds less than its marking says when dc lies across it: its marked value is an
/// upper limit.
/// </remarks>
/// <param name="Energy">In joule.</param>
/// <param name="Charge">In coulomb.</param>
public sealed record StoredCharge(Interval Energy, Interval Charge)
{
    /// <summary>Computes both.</summary>
    /// <param name="capacitance">In farad.</param>
    /// <param name="voltage">In volt, zero or above.</param>
    public static Reckoning<StoredCharge> Of(Interval? capacitance, Interval? voltage) => new InputCheck()
        .Positive("capacitance", capacitance, Unit.Farad)
        .NotNegative("voltage", voltage, Unit.Volt)
        .Reckon(() => new StoredCharge(Interval.Exactly(0.5) * capacitance!.Value * voltage!.Value * voltage.Value, capacitance.Value * voltage.Value));
}
