using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Codes;

/// <summary>The codes that a marking on a part of one kind may be written in.</summary>
public static class PartCodes
{
    /// <summary>All readings of one marking, surest first; of equally sure ones none is to be preferred. Empty where no code fits.</summary>
    /// <param name="text">One marking without blanks; micro and omega may be of either kind.</param>
    /// <param name="kind">The kind of part; without it only letter-number forms of resistors and capacitors are read.</param>
    public static IReadOnlyList<CodeReading> Decode(string text, PartKind kind)
    {
        ArgumentNullException.ThrowIfNull(text);
        return kind switch
        {
            PartKind.Resistor or PartKind.Thermistor => First(ChipResistorCode.Decode(text), LetterNumberCode.Decode(text, kind)),
            PartKind.Capacitor => First(CapacitorCode.Decode(text), LetterNumberCode.Decode(text, kind)),
            PartKind.Inductor => First(InductorCode.Decode(text), LetterNumberCode.Decode(text, kind)),
            PartKind.NotSaid when text.AsSpan().IndexOfAnyInRange('0', '9') == 0 => First(LetterNumberCode.Decode(text, PartKind.Resistor), LetterNumberCode.Decode(text, PartKind.Capacitor)),
            _ => [],
        };
    }

    private static IReadOnlyList<CodeReading> First(IReadOnlyList<CodeReading> one, IReadOnlyList<CodeReading> other) => one.Count > 0 ? one : other;
}
