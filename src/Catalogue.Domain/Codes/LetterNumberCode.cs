using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Codes;

/// <summary>Values with a letter where the decimal point would be, and an optional tolerance letter: <c>4K7</c>, <c>R010F</c>, <c>4n7K</c>.</summary>
/// <remarks>
/// <c>digits* letter digits* tolerance?</c> with at least one digit. Resistors: L 10⁻³ (trade usage), R or the old E 1, K 10³, M 10⁶, G 10⁹,
/// T 10¹². Capacitors: p n µ m F, where case counts: a capital M never means micro or milli. Coils: n µ m. Source: IEC 60062.
/// </remarks>
public static class LetterNumberCode
{
    /// <summary>Longer texts are no code.</summary>
    public const int MaxLength = 12;

    /// <summary>The reading, or nothing where the text is no such code for such a part.</summary>
    /// <param name="text">The code alone, without blanks.</param>
    /// <param name="kind">Resistor, thermistor, capacitor or inductor; for others there are no such codes.</param>
    public static IReadOnlyList<CodeReading> Decode(string text, PartKind kind)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (text.Length is < 2 or > MaxLength || kind.ValueUnit() is not { } unit)
            return [];
        var before = Run(text, 0);
        if (before >= text.Length || Power(text[before], unit) is not { } power)
            return [];
        var end = Run(text, before + 1);
        var digits = string.Concat(text.AsSpan(0, before), text.AsSpan(before + 1, end - before - 1));
        if (digits.Length is 0 or > 10 || end < text.Length - 1)
            return [];
        var value = new DecimalNumber(ulong.Parse(digits, System.Globalization.CultureInfo.InvariantCulture), power - (end - before - 1));
        var confidence = text[before] is 'L' or 'E' ? Certainty.Medium : Certainty.High;
        var note = text[before] == 'L' ? "L read as the milliohm decimal mark" : null;
        var reading = end == text.Length
            ? CodeReading.Of(CodeScheme.LetterNumber, value, unit, confidence, text, note)
            : CodeReading.Of(CodeScheme.LetterNumber, value, unit, text[^1], confidence, text, note);
        return reading is null ? [] : [reading];
    }

    private static int? Power(char letter, Unit unit) => (unit, letter) switch
    {
        (Unit.Ohm, 'L') => -3,
        (Unit.Ohm, 'R' or 'r' or 'E') => 0,
        (Unit.Ohm, 'K' or 'k') => 3,
        (Unit.Ohm, 'M') => 6,
        (Unit.Ohm, 'G') => 9,
        (Unit.Ohm, 'T') => 12,
        (Unit.Farad, 'p') => -12,
        (Unit.Farad or Unit.Henry, 'n') => -9,
        (Unit.Farad or Unit.Henry, 'µ' or 'μ' or 'u') => -6,
        (Unit.Farad or Unit.Henry, 'm') => -3,
        (Unit.Farad, 'F') => 0,
        _ => null,
    };

    private static int Run(string text, int from)
    {
        while (from < text.Length && char.IsAsciiDigit(text[from]))
            from++;
        return from;
    }
}
