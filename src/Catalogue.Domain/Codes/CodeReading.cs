using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Codes;

/// <summary>One way to read a marking. Decoders return all ways, surest first; of equal ones neither is to be preferred.</summary>
/// <param name="Scheme">The code it was read by.</param>
/// <param name="Quantity">The value; a tolerance stands in its low and high.</param>
/// <param name="Confidence">How sure the reading is.</param>
/// <param name="Used">Exactly the characters that were read.</param>
/// <param name="Tolerance">The tolerance in words, such as <c>±5 %</c> or <c>+80/−20 %</c>, or null where none was marked.</param>
/// <param name="RatedVoltage">The voltage marked beside the value, or null.</param>
/// <param name="Note">What a person should know of this reading, or null.</param>
public sealed record CodeReading(
    CodeScheme Scheme,
    Quantity Quantity,
    Certainty Confidence,
    string Used,
    string? Tolerance = null,
    Quantity? RatedVoltage = null,
    string? Note = null)
{
    internal static CodeReading Of(CodeScheme scheme, DecimalNumber value, Unit unit, Certainty confidence, string used, string? note = null) =>
        new(scheme, Quantity.Exactly(value.ToDouble(), unit), confidence, used, Note: note);

    /// <summary>A reading with the tolerance a letter stands for; null where the letter stands for none.</summary>
    internal static CodeReading? Of(CodeScheme scheme, DecimalNumber value, Unit unit, char letter, Certainty confidence, string used, string? note = null)
    {
        if (ToleranceLetters.Find(letter, unit, value) is not { } tolerance)
            return null;
        var (low, high) = tolerance.IsAbsolute ? value.Around(tolerance.Below, tolerance.Above) : value.Spread(tolerance.Below, tolerance.Above);
        var quantity = Quantity.Between(Math.Max(0, low), value.ToDouble(), high, unit);
        return new CodeReading(scheme, quantity, confidence < tolerance.Confidence ? confidence : tolerance.Confidence, used, tolerance.Text, Note: note);
    }
}
