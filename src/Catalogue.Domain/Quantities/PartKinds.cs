using System.Collections.Frozen;

namespace Catalogue.Domain.Quantities;

/// <summary>The words for kinds of part and what each kind takes for granted.</summary>
public static class PartKinds
{
    private static readonly (PartKind Kind, string[] Words)[] All =
    [
        (PartKind.Resistor, ["resistor", "shunt", "resistor_network", "res", "r"]),
        (PartKind.Capacitor, ["capacitor", "ceramic_capacitor", "aluminium_capacitor", "film_capacitor", "safety_capacitor", "tantalum_capacitor", "electrolytic", "mlcc", "cap", "c"]),
        (PartKind.Inductor, ["inductor", "coil", "choke", "l"]),
        (PartKind.Fuse, ["fuse", "blade_fuse", "cartridge_fuse", "resettable_fuse", "ul_cartridge_fuse", "iec_cartridge_fuse", "f"]),
        (PartKind.Diode, ["diode", "rectifier", "signal_diode", "zener", "zener_diode", "schottky", "tvs", "led", "d"]),
        (PartKind.Transistor, ["transistor", "switch", "mosfet", "igbt", "bjt", "fet", "q"]),
        (PartKind.Crystal, ["crystal", "resonator", "oscillator", "timing", "y"]),
        (PartKind.Varistor, ["varistor", "mov", "rv"]),
        (PartKind.Thermistor, ["thermistor", "ntc", "ptc", "rt"]),
        (PartKind.Cell, ["cell", "battery", "pack", "bt"]),
    ];

    private static readonly FrozenDictionary<string, PartKind> ByWord =
        All.SelectMany(entry => entry.Words.Select(word => (word, entry.Kind))).ToFrozenDictionary(pair => pair.word, pair => pair.Kind, StringComparer.OrdinalIgnoreCase);

    /// <summary>The first word of each kind, for messages that say what would be right.</summary>
    public static IReadOnlyList<string> Known { get; } = [.. All.Select(entry => entry.Words[0])];

    /// <summary>The kind a word stands for, or null. Blanks and hyphens count as underscores, case does not count; a plural is understood.</summary>
    public static PartKind? Find(string? word)
    {
        if (word is null or { Length: > 40 })
            return null;
        var key = word.Trim().Replace(' ', '_').Replace('-', '_');
        return ByWord.TryGetValue(key, out var kind) || (key.Length > 2 && key[^1] is 's' or 'S' && ByWord.TryGetValue(key[..^1], out kind)) ? kind : null;
    }

    /// <summary>The word for a kind, such as <c>resistor</c>.</summary>
    public static string Word(this PartKind kind) => kind is PartKind.NotSaid ? "part" : All[(int)kind - 1].Words[0];

    /// <summary>The unit that the value of such a part has, or null where a part has no one value.</summary>
    public static Unit? ValueUnit(this PartKind kind) => kind switch
    {
        PartKind.Resistor or PartKind.Thermistor => Unit.Ohm,
        PartKind.Capacitor => Unit.Farad,
        PartKind.Inductor => Unit.Henry,
        PartKind.Fuse => Unit.Ampere,
        PartKind.Crystal => Unit.Hertz,
        PartKind.Varistor => Unit.Volt,
        _ => null,
    };
}
