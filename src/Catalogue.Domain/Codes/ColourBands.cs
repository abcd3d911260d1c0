using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Codes;

/// <summary>Colour bands of resistors, from the end where reading begins.</summary>
/// <remarks>
/// Three and four bands have two digits, five and six have three; then the power of ten, the tolerance, the temperature coefficient. Gold is
/// 10⁻¹, silver 10⁻², pink 10⁻³. Without a tolerance band it is ±20 %. Orange, yellow and grey as tolerance follow the 2016 edition, which
/// differs from older tables, and are of medium confidence. Source: IEC 60062.
/// </remarks>
public static class ColourBands
{
    private static readonly string[] Digits = ["black", "brown", "red", "orange", "yellow", "green", "blue", "violet", "grey", "white"];
    private static readonly char[] Separators = [' ', '|', '-', ',', '/', ';'];

    /// <summary>The reading, or nothing where the words are no bands of a resistor.</summary>
    /// <param name="text">Three to six English colour words, separated by blanks, commas, hyphens, slashes or bars; case does not count.</param>
    public static IReadOnlyList<CodeReading> Decode(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (text.Length > 80)
            return [];
        var bands = text.Split(Separators, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Select(Canonical).ToArray();
        if (bands.Length is < 3 or > 6)
            return [];
        var digitBands = bands.Length >= 5 ? 3 : 2;
        var digits = 0UL;
        foreach (var band in bands.AsSpan(0, digitBands))
        {
            var digit = Array.IndexOf(Digits, band);
            if (digit < 0)
                return [];
            digits = (digits * 10) + (ulong)digit;
        }

        if (Power(bands[digitBands]) is not { } power || (bands.Length == 6 && Array.IndexOf(Digits, bands[5]) < 0))
            return [];
        var (hundredths, confidence) = bands.Length == 3 ? (2000UL, Certainty.High) : Tolerance(bands[digitBands + 1]);
        if (hundredths == 0)
            return [];
        var value = new DecimalNumber(digits, power);
        var share = new DecimalNumber(hundredths, -4);
        var (low, high) = value.Spread(share, share);
        var tolerance = $"±{QuantityText.Number(hundredths / 100.0)} %";
        return [new CodeReading(CodeScheme.ColourBands, Quantity.Between(low, value.ToDouble(), high, Unit.Ohm), confidence, text, tolerance)];
    }

    /// <summary>True for a word that is the colour of a band.</summary>
    internal static bool IsColour(ReadOnlySpan<char> word)
    {
        foreach (var colour in Digits)
            if (word.Equals(colour, StringComparison.OrdinalIgnoreCase))
                return true;
        return word.Equals("gold", StringComparison.OrdinalIgnoreCase) || word.Equals("silver", StringComparison.OrdinalIgnoreCase) || word.Equals("pink", StringComparison.OrdinalIgnoreCase)
            || word.Equals("gray", StringComparison.OrdinalIgnoreCase) || word.Equals("purple", StringComparison.OrdinalIgnoreCase);
    }

    private static string Canonical(string word) => word.ToLowerInvariant() switch
    {
        "gray" => "grey",
        "purple" => "violet",
        var other => other,
    };

    private static int? Power(string colour) => colour switch
    {
        "gold" => -1,
        "silver" => -2,
        "pink" => -3,
        _ => Array.IndexOf(Digits, colour) is >= 0 and var power ? power : null,
    };

    private static (ulong Hundredths, Certainty Confidence) Tolerance(string colour) => colour switch
    {
        "brown" => (100, Certainty.High),
        "red" => (200, Certainty.High),
        "green" => (50, Certainty.High),
        "blue" => (25, Certainty.High),
        "violet" => (10, Certainty.High),
        "gold" => (500, Certainty.High),
        "silver" => (1000, Certainty.High),
        "orange" => (5, Certainty.Medium),
        "yellow" => (2, Certainty.Medium),
        "grey" => (1, Certainty.Medium),
        _ => (0, Certainty.Low),
    };
}
