using System.Globalization;

namespace Catalogue.Domain.UsbPd;

/// <summary>The supplies that a port's captured words offer, each in words.</summary>
public static class SupplyWords
{
    /// <summary>One line a word, such as <c>9 V 3 A</c> or <c>3.3 to 11 V, 2.75 A, programmable</c>.</summary>
    /// <param name="words">As captured.</param>
    public static IEnumerable<string> Of(IReadOnlyList<string> words)
    {
        ArgumentNullException.ThrowIfNull(words);
        for (var i = 0; i < words.Count; i++)
            yield return WordText.Read(words[i], out var word) is null ? Of(CapabilityWord.Decode(word, i + 1)) : "not readable";
    }

    /// <summary>One supply in words.</summary>
    internal static string Of(Capability capability) => capability switch
    {
        Capability.Fixed x => $"{Volts(x.VoltageMv)} {Amperes(x.MaxCurrentMa)}",
        Capability.Battery x => $"{Volts(x.MinMv, x.MaxMv)}, {Thousandth(x.MaxPowerMw)}\u00A0W, battery",
        Capability.Variable x => $"{Volts(x.MinMv, x.MaxMv)}, {Amperes(x.MaxCurrentMa)}, variable",
        Capability.SprPps x => $"{Volts(x.MinMv, x.MaxMv)}, {Amperes(x.MaxCurrentMa)}, programmable{(x.IsPowerLimited ? ", power limited" : "")}",
        Capability.SprAvs x => $"{Volts(Capability.SprAvs.LowestMv, Capability.SprAvs.SplitMv)}, {Amperes(x.CurrentTo15VMa)}{(x.CurrentTo20VMa > 0 ? $"; to {Volts(Capability.SprAvs.HighestMv)}, {Amperes(x.CurrentTo20VMa)}" : "")}, adjustable",
        Capability.EprAvs x => $"{Volts(x.MinMv, x.MaxMv)}, {x.PdpW.ToString(CultureInfo.InvariantCulture)}\u00A0W, adjustable",
        Capability.Padding => "padding",
        _ => "of a reserved kind",
    };

    private static string Volts(int millivolts) => $"{Thousandth(millivolts)}\u00A0V";

    private static string Volts(int from, int to) => $"{Thousandth(from)} to {Volts(to)}";

    private static string Amperes(int milliamperes) => $"{Thousandth(milliamperes)}\u00A0A";

    private static string Thousandth(int value) => (value / 1000m).ToString("0.###", CultureInfo.InvariantCulture);
}
