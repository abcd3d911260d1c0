using System.Globalization;
using Catalogue.Domain.Products;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.UsbPd;

namespace Catalogue.Domain.Figures;

/// <summary>What a port offers at most, from its captured capability words, else from what is printed beside it.</summary>
/// <param name="MinVolts">The lowest voltage offered, in volt.</param>
/// <param name="MaxVolts">The highest voltage offered, in volt.</param>
/// <param name="MaxAmperes">The highest current offered, in ampere.</param>
/// <param name="MaxWatts">The highest power offered, in watt.</param>
/// <param name="How">How that is known, in words.</param>
/// <param name="IsDecoded">True when it was decoded from words, false when it is what the label says.</param>
public sealed record PortOffer(double MinVolts, double MaxVolts, double MaxAmperes, double MaxWatts, string How, bool IsDecoded)
{
    /// <summary>The offer of a port, or null where neither words nor label give voltages with currents.</summary>
    public static PortOffer? Of(Port port)
    {
        ArgumentNullException.ThrowIfNull(port);
        return Decoded(port) ?? Printed(port);
    }

    /// <summary>What the captured words offer, or null without readable ones.</summary>
    public static PortOffer? Decoded(Port port)
    {
        ArgumentNullException.ThrowIfNull(port);
        var words = WordText.ReadAll(port.CapabilityWords);
        if (words.Count == 0)
            return null;
        var list = CapabilityList.Of(words);
        // A programmable supply that says it is power limited may not give its voltage times its current.
        var supplies = list.Items.Select(item => item.Capability).Where(item => item.Window is not null && item.HighestCurrentMa > 0).ToList();
        if (supplies.Count == 0)
            return null;
        var watts = supplies.Where(item => item is not Capability.SprPps { IsPowerLimited: true }).Select(item => item is Capability.EprAvs avs ? avs.PdpW : item.Window!.Value.MaxMv * (double)item.HighestCurrentMa!.Value / 1e6).DefaultIfEmpty(0).Max();
        return watts <= 0
            ? null
            : new PortOffer(
                supplies.Min(item => item.Window!.Value.MinMv) / 1000.0,
                supplies.Max(item => item.Window!.Value.MaxMv) / 1000.0,
                supplies.Max(item => item.HighestCurrentMa!.Value) / 1000.0,
                watts,
                $"derived: the {supplies.Count.ToString(CultureInfo.InvariantCulture)} supplies that {port.Name} offers",
                true);
    }

    /// <summary>What is printed beside the port, or null where it gives no voltage with a current or a power.</summary>
    public static PortOffer? Printed(Port port)
    {
        ArgumentNullException.ThrowIfNull(port);
        if (QuantityParser.Read(port.AsPrinted) is not QuantityReading.Read { Quantities: var found })
            return null;
        // Each voltage up to the next one carries the current or the power printed behind it: 5V⎓3A, 9V⎓2A.
        var pairs = new List<(double Low, double High, double Amperes, double Watts)>();
        (double Low, double High)? volts = null;
        foreach (var (quantity, _, _, _, _) in found)
        {
            switch (quantity)
            {
                case { Unit: Unit.Volt, Low: { } low, High: { } high } when low > 0:
                    volts = (low, high);
                    break;
                case { Unit: Unit.Ampere, Value: { } amperes } when volts is { } at && amperes > 0:
                    pairs.Add((at.Low, at.High, amperes, at.High * amperes));
                    break;
                case { Unit: Unit.Watt, Value: { } watts } when volts is { } at && watts > 0 && !pairs.Exists(pair => pair.High == at.High):
                    pairs.Add((at.Low, at.High, watts / at.Low, watts));
                    break;
            }
        }

        return pairs.Count == 0
            ? null
            : new PortOffer(pairs.Min(pair => pair.Low), pairs.Max(pair => pair.High), pairs.Max(pair => pair.Amperes), pairs.Max(pair => pair.Watts), $"derived: {port.Name}, printed “{port.AsPrinted}”", false);
    }
}
