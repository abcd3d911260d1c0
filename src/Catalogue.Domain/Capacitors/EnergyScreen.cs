using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Capacitors;

/// <summary>The band that stored energy is shown in. Raised, never lowered, by a missing value.</summary>
/// <remarks>
/// Note: up to 60 V and below 1 J. Burn: up to 60 V from 1 J, or a battery's terminal. Caution: above 60 V and above the class 1 limit for a charged capacitor
/// (<see cref="EnergySourceLimit"/>). Warning: above 120 V from 0.1 µF or from 0.25 J. Danger: above 60 V from 10 J. Source: house rule.
/// </remarks>
/// <param name="Band">The band.</param>
/// <param name="TextKey">The caution's code, or null for a note.</param>
/// <param name="Reason">Why, in words.</param>
public sealed record EnergyScreen(EnergyBand Band, string? TextKey, string Reason)
{
    /// <summary>How the bands are named wherever one is shown.</summary>
    public const string Source = "house rule: display bands, deliberately careful";

    private const double LowVolts = 60;
    private const double HighVolts = 120;
    private const double BurnJoules = 1;
    private const double ReflexJoules = 0.25;
    private const double InjuryJoules = 10;
    private const double ReflexFarads = 0.1e-6;

    /// <summary>The band of the highest case of what is known.</summary>
    /// <param name="voltage">In volt, of either sign; null where not known.</param>
    /// <param name="capacitance">In farad; null where not known. Zero and below count as not known.</param>
    /// <param name="isBattery">True at the terminals of a battery.</param>
    public static EnergyScreen Of(Interval? voltage, Interval? capacitance, bool isBattery)
    {
        var farads = capacitance is { High: > 0 } known ? known.High : default(double?);
        if (voltage is not { } v)
            return farads is { } held && Joules(LowVolts, held) >= InjuryJoules
                ? Danger("the voltage is not known, and 60 V would already mean 10 J")
                : Warning("the voltage is not known");
        var volts = Math.Max(Math.Abs(v.Low), Math.Abs(v.High));
        if (volts <= LowVolts)
            return Low(farads is { } small ? Joules(volts, small) : null, isBattery);
        if (isBattery)
            return Danger("a battery above 60 V does not run empty like a capacitor");
        return farads is { } large ? High(volts, large) : Warning("above 60 V, and the capacitance is not known");
    }

    private static EnergyScreen Low(double? joules, bool isBattery) => (joules, isBattery) switch
    {
        (_, true) => Burn("a battery's terminal"),
        (null, _) => Burn("up to 60 V, and the capacitance is not known"),
        ( >= BurnJoules, _) => Burn("up to 60 V, from 1 J"),
        _ => new EnergyScreen(EnergyBand.Note, null, "up to 60 V, below 1 J"),
    };

    private static EnergyScreen High(double volts, double farads)
    {
        var joules = Joules(volts, farads);
        if (joules >= InjuryJoules)
            return Danger("above 60 V, from 10 J");
        if (volts > HighVolts && (farads >= ReflexFarads || joules >= ReflexJoules))
            return Warning("above 120 V, from 0.1 µF or 0.25 J");
        // A capacitance outside of the limits' range is no reason to think it harmless.
        return EnergySourceLimit.For(Interval.Exactly(farads)) is Reckoning<EnergySourceLimit>.Done { Value.Class1: var limit } && volts <= limit
            ? new EnergyScreen(EnergyBand.Note, null, "above 60 V, within the class 1 limit for so small a capacitor")
            : new EnergyScreen(EnergyBand.Caution, "charged_capacitor", "above 60 V and above the class 1 limit for a charged capacitor");
    }

    private static EnergyScreen Burn(string reason) => new(EnergyBand.Burn, "low_voltage_high_current", reason);

    private static EnergyScreen Warning(string reason) => new(EnergyBand.Warning, "charged_capacitor_serious", reason);

    private static EnergyScreen Danger(string reason) => new(EnergyBand.Danger, "charged_capacitor_danger", reason);

    private static double Joules(double volts, double farads) => farads * volts * volts / 2;
}
