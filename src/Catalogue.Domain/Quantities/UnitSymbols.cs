namespace Catalogue.Domain.Quantities;

/// <summary>The two spellings of each unit: the code that files and the API carry, and the sign that people read.</summary>
public static class UnitSymbols
{
    private static readonly (Unit Unit, string Code, string Sign)[] All =
    [
        (Unit.Volt, "V", "V"),
        (Unit.Ampere, "A", "A"),
        (Unit.Watt, "W", "W"),
        (Unit.WattHour, "Wh", "Wh"),
        (Unit.AmpereHour, "Ah", "Ah"),
        (Unit.Ohm, "ohm", "Ω"),
        (Unit.Farad, "F", "F"),
        (Unit.Henry, "H", "H"),
        (Unit.Hertz, "Hz", "Hz"),
        (Unit.DegreeCelsius, "degC", "°C"),
        (Unit.Metre, "m", "m"),
        (Unit.Second, "s", "s"),
        (Unit.Kilogram, "kg", "kg"),
        (Unit.PerDegreeCelsius, "1/degC", "/°C"),
        (Unit.Joule, "J", "J"),
        (Unit.DegreeCelsiusPerWatt, "degC/W", "°C/W"),
        (Unit.Ratio, "ratio", ""),
    ];

    /// <summary>All codes, in the order of <see cref="Unit"/>; for error messages that say what would be right.</summary>
    public static IReadOnlyList<string> Codes { get; } = [.. All.Select(entry => entry.Code)];

    /// <summary>The code of a unit, such as <c>ohm</c> or <c>degC</c>.</summary>
    public static string Code(this Unit unit) => All[(int)unit].Code;

    /// <summary>The sign of a unit, such as <c>Ω</c>; empty for a ratio.</summary>
    public static string Sign(this Unit unit) => All[(int)unit].Sign;

    /// <summary>The unit that a code or a sign stands for, or null. Case counts: <c>h</c> is no henry.</summary>
    public static Unit? Find(string? text)
    {
        foreach (var entry in All)
            if (text is { Length: > 0 } && (text == entry.Code || text == entry.Sign))
                return entry.Unit;
        return text switch
        {
            "Ω" or "Ohm" or "ohms" => Unit.Ohm,
            "℃" or "C" => Unit.DegreeCelsius,
            _ => null,
        };
    }
}
