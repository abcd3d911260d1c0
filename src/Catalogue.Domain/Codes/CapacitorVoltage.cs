using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Codes;

/// <summary>The rated dc voltage of a capacitor as digit and letter (<c>1H</c> is 50 V), and as one letter on chip tantalum.</summary>
/// <remarks>
/// <para>Letter times ten to the digit, with the R10 series A 1.0, B 1.25, C 1.6, D 2.0, E 2.5, F 3.15, G 4.0, H 5.0, J 6.3, K 8.0, and V 3.5,
/// W 4.5. A few codes in use do not follow it and are kept as a list of medium confidence. <c>3F</c> is 3150 V by the rule and sold as 3 kV.</para>
/// <para>Source: trade usage of the R10 series (ISO 3); the exceptions and the single letters are habit of makers.</para>
/// </remarks>
public static class CapacitorVoltage
{
    /// <summary>The voltage of a code of digit 0 to 3 and letter, or null where there is none.</summary>
    public static (Quantity Voltage, Certainty Confidence)? Decode(string code)
    {
        ArgumentNullException.ThrowIfNull(code);
        if (code.Length != 2)
            return null;
        if (Irregular(code) is { } odd)
            return (Quantity.Exactly(odd, Unit.Volt) with { Current = CurrentKind.Direct }, Certainty.Medium);
        if (code[0] is < '0' or > '3' || Hundredths(code[1]) is not { } hundredths)
            return null;
        var volts = new DecimalNumber(hundredths, code[0] - '0' - 2).ToDouble();
        var confidence = code is "1B" or "1G" or "1W" || code[1] == 'F' || (code[0] == '3' && code[1] != 'A') ? Certainty.Medium : Certainty.High;
        return (Quantity.Exactly(volts, Unit.Volt) with { Current = CurrentKind.Direct }, confidence);
    }

    /// <summary>The voltage of the single letter in front of a chip tantalum's code, by custom; null for other letters.</summary>
    public static Quantity? DecodeLetter(char letter)
    {
        double? volts = letter switch
        {
            'G' => 4,
            'J' => 6.3,
            'A' => 10,
            'C' => 16,
            'D' => 20,
            'E' => 25,
            'V' => 35,
            'H' or 'T' => 50,
            _ => null,
        };
        return volts is { } known ? Quantity.Exactly(known, Unit.Volt) with { Current = CurrentKind.Direct } : null;
    }

    private static ulong? Hundredths(char letter) => letter switch
    {
        'A' => 100,
        'B' => 125,
        'C' => 160,
        'D' => 200,
        'E' => 250,
        'F' => 315,
        'G' => 400,
        'H' => 500,
        'J' => 630,
        'K' => 800,
        'V' => 350,
        'W' => 450,
        _ => null,
    };

    private static double? Irregular(string code) => code switch
    {
        "0L" => 5.5,
        "2Q" => 110,
        "2T" => 150,
        "2Z" => 180,
        "2P" => 220,
        "3L" => 1200,
        _ => null,
    };
}
