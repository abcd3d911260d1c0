using Catalogue.Domain.Text;

namespace Catalogue.Domain.Components;

/// <summary>Reads what people write of a part's role into its function class.</summary>
/// <remarks>House rule: trade words and the classes' own codes; the most telling word in the text decides.</remarks>
public static class FunctionClassText
{
    // The first that the text holds decides, so narrower words stand before wider ones.
    private static readonly (string Word, FunctionClass Class)[] Words =
    [
        ("resettable", FunctionClass.ResettableFuse), ("polyfuse", FunctionClass.ResettableFuse), ("ptc", FunctionClass.ResettableFuse), ("blade fuse", FunctionClass.BladeFuse), ("fuse", FunctionClass.Fuse),
        ("optocoupler", FunctionClass.Optocoupler), ("opto", FunctionClass.Optocoupler), ("photocoupler", FunctionClass.Optocoupler), ("isolator", FunctionClass.Optocoupler),
        ("cell protection", FunctionClass.CellProtection), ("battery protection", FunctionClass.CellProtection), ("balancer", FunctionClass.CellProtection), ("bms", FunctionClass.CellProtection),
        ("protocol", FunctionClass.ProtocolChip), ("usb pd", FunctionClass.ProtocolChip), ("fast charge", FunctionClass.ProtocolChip), ("pd controller", FunctionClass.ProtocolChip),
        ("microcontroller", FunctionClass.Microcontroller), ("mcu", FunctionClass.Microcontroller),
        ("gate driver", FunctionClass.OtherPart), ("controller", FunctionClass.Controller), ("pwm", FunctionClass.Controller), ("pfc", FunctionClass.Controller),
        ("regulator", FunctionClass.Regulator), ("ldo", FunctionClass.Regulator), ("buck", FunctionClass.Regulator), ("boost", FunctionClass.Regulator), ("charger", FunctionClass.Regulator),
        ("bridge rectifier", FunctionClass.Rectifier), ("rectifier", FunctionClass.Rectifier), ("schottky", FunctionClass.Rectifier), ("zener", FunctionClass.SignalDiode), ("tvs", FunctionClass.SignalDiode), ("diode", FunctionClass.Rectifier),
        ("mosfet", FunctionClass.Switch), ("igbt", FunctionClass.Switch), ("gan", FunctionClass.Switch), ("fet", FunctionClass.Switch), ("switch", FunctionClass.Switch), ("transistor", FunctionClass.Transistor),
        ("electrolytic", FunctionClass.AluminiumCapacitor), ("tantalum", FunctionClass.TantalumCapacitor), ("film capacitor", FunctionClass.FilmCapacitor), ("mlcc", FunctionClass.CeramicCapacitor), ("capacitor", FunctionClass.Capacitor),
        ("shunt", FunctionClass.Shunt), ("resistor", FunctionClass.Resistor), ("transformer", FunctionClass.Transformer), ("inductor", FunctionClass.Inductor), ("choke", FunctionClass.Inductor),
        ("varistor", FunctionClass.Varistor), ("mov", FunctionClass.Varistor), ("thermistor", FunctionClass.Thermistor), ("ntc", FunctionClass.Thermistor), ("relay", FunctionClass.Relay),
        ("connector", FunctionClass.Connector), ("socket", FunctionClass.Connector), ("cell", FunctionClass.Cell), ("led", FunctionClass.Indicator), ("display", FunctionClass.Indicator), ("crystal", FunctionClass.Timing), ("resonator", FunctionClass.Timing),
    ];

    /// <summary>The class a code, the class's own words or a role in plain words speak of, or null. Texts of more than 200 characters say nothing.</summary>
    public static FunctionClass? Read(string? text)
    {
        if (string.IsNullOrWhiteSpace(text) || text.Length > 200)
            return null;
        var words = text.Trim().ToLowerInvariant();
        if (SnakeCase.TryParse<FunctionClass>(words) is { } code)
            return code;
        foreach (var functionClass in Enum.GetValues<FunctionClass>())
        {
            if (functionClass.Word().Equals(words, StringComparison.OrdinalIgnoreCase))
                return functionClass;
        }

        foreach (var (word, functionClass) in Words)
        {
            if (HoldsWord(words, word))
                return functionClass is FunctionClass.OtherPart ? null : functionClass;
        }

        return null;
    }

    // "switches" speaks of a switch, "rocking" of no king.
    private static bool HoldsWord(string text, string word)
    {
        for (var at = text.IndexOf(word, StringComparison.Ordinal); at >= 0; at = text.IndexOf(word, at + 1, StringComparison.Ordinal))
        {
            var end = at + word.Length;
            if ((at == 0 || !char.IsLetterOrDigit(text[at - 1])) && (end == text.Length || !char.IsLetterOrDigit(text[end]) || text[end..].StartsWith('s') || text[end..].StartsWith("es", StringComparison.Ordinal)))
                return true;
        }

        return false;
    }
}
