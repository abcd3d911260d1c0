using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Capacitors;

/// <summary>A rule of thumb for the size of a bulk capacitor. Outside it a bulk capacitor is worth a look, no more.</summary>
/// <remarks>Source: trade rules of thumb, in farad per watt.</remarks>
/// <param name="Use">What the capacitor is there for.</param>
/// <param name="Low">The lower end, in farad per watt.</param>
/// <param name="High">The upper end, in farad per watt; the same as the lower one for an “about”.</param>
/// <param name="Words">The rule in words.</param>
public sealed record BulkRule(BulkUse Use, double Low, double High, string Words)
{
    /// <summary>How well the rules are founded.</summary>
    public const Confidence Mark = Confidence.Medium;

    /// <summary>The rule of a use.</summary>
    public static BulkRule For(BulkUse use) => use switch
    {
        BulkUse.UniversalInput => new BulkRule(use, 2e-6, 3e-6, "2 to 3 µF/W behind a universal-input rectifier"),
        BulkUse.Mains230 => new BulkRule(use, 1e-6, 1e-6, "about 1 µF/W behind a rectifier for 230 V only"),
        _ => new BulkRule(use, 0.5e-6, 1e-6, "0.5 to 1 µF/W at 400 V behind a power-factor stage"),
    };

    /// <summary>Capacitance per watt, in farad per watt.</summary>
    /// <param name="capacitance">In farad.</param>
    /// <param name="power">In watt.</param>
    public static Reckoning<Interval> PerWatt(Interval? capacitance, Interval? power) => new InputCheck()
        .Positive("capacitance", capacitance, Unit.Farad)
        .Positive("power", power, Unit.Watt)
        .Reckon(() => capacitance!.Value / power!.Value);
}
