using Catalogue.Domain.Quantities;
using Catalogue.Domain.Stress;

namespace Catalogue.Domain.Capacitors;

/// <summary>How much of its rated voltage a capacitor sees.</summary>
/// <remarks>
/// <c>utilisation = (V_dc + V_ripple) / V_rated</c>, ripple as a peak value above the dc voltage. Both and the rating in volt dc; an ac rating of a film part is
/// not its dc rating over √2. Source: definition.
/// </remarks>
public static class CapacitorUse
{
    /// <summary>Computes utilisation, margin and safety factor.</summary>
    /// <param name="dcVoltage">In volt.</param>
    /// <param name="ripplePeak">Above the dc voltage, in volt; zero where there is none.</param>
    /// <param name="ratedVoltage">In volt.</param>
    public static Reckoning<RatingUse> Of(Interval? dcVoltage, Interval? ripplePeak, Interval? ratedVoltage) => new InputCheck()
        .Positive("dc_voltage", dcVoltage, Unit.Volt)
        .NotNegative("ripple_peak", ripplePeak, Unit.Volt)
        .Reckon((up, _) => up(dcVoltage!.Value) + up(ripplePeak!.Value))
        .Then(stress => RatingUse.Of(stress, ratedVoltage, Unit.Volt));
}
