using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Codes;

/// <summary>What a letter behind a value says of its tolerance.</summary>
/// <remarks>
/// Source: IEC 60062. On capacitors up to 10 pF the letters B, C, D mean picofarads, below 10 pF F and G too; by the standard the line is below
/// 10 pF, by trade habit at 10 pF D is ±0.5 pF.
/// </remarks>
internal static class ToleranceLetters
{
    /// <summary>A tolerance: shares of the value, or absolute in the unit of the value.</summary>
    internal sealed record Tolerance(DecimalNumber Below, DecimalNumber Above, bool IsAbsolute, string Text, Certainty Confidence);

    private const double TenPicofarads = 10e-12;

    /// <summary>The tolerance, or null where the letter says none for such a part.</summary>
    public static Tolerance? Find(char letter, Unit unit, DecimalNumber value)
    {
        if (unit is Unit.Farad)
        {
            var farads = value.ToDouble();
            (ulong Digits, int Exponent, string? Text) picofarads = letter switch
            {
                'B' when farads <= TenPicofarads => (1UL, -13, "±0.1 pF"),
                'C' when farads <= TenPicofarads => (25UL, -14, "±0.25 pF"),
                'D' when farads <= TenPicofarads => (5UL, -13, "±0.5 pF"),
                'F' when farads < TenPicofarads => (1UL, -12, "±1 pF"),
                'G' when farads < TenPicofarads => (2UL, -12, "±2 pF"),
                _ => (0UL, 0, null),
            };
            if (picofarads.Text is not null)
            {
                var absolute = new DecimalNumber(picofarads.Digits, picofarads.Exponent);
                return new Tolerance(absolute, absolute, IsAbsolute: true, picofarads.Text, Certainty.High);
            }
        }

        return letter switch
        {
            'B' => Even(10, "0.1", Certainty.High),
            'C' => Even(25, "0.25", Certainty.High),
            'D' => Even(50, "0.5", Certainty.High),
            'F' => Even(100, "1", Certainty.High),
            'G' => Even(200, "2", Certainty.High),
            'H' => Even(300, "3", Certainty.Medium),
            'J' => Even(500, "5", Certainty.High),
            'K' => Even(1000, "10", Certainty.High),
            'M' => Even(2000, "20", Certainty.High),
            'N' => Even(3000, "30", Certainty.Medium),
            'Z' when unit is Unit.Farad => Uneven(80, 20, Certainty.High),
            'S' when unit is Unit.Farad => Uneven(50, 20, Certainty.Medium),
            'Q' when unit is Unit.Farad => Uneven(30, 10, Certainty.Medium),
            'T' when unit is Unit.Farad => Uneven(50, 10, Certainty.Medium),
            'W' or 'A' when unit is Unit.Ohm => Even(5, "0.05", Certainty.Medium),
            'P' when unit is Unit.Ohm => Even(2, "0.02", Certainty.Medium),
            'L' when unit is Unit.Ohm => Even(1, "0.01", Certainty.Medium),
            'E' when unit is Unit.Ohm => new Tolerance(new DecimalNumber(5, -5), new DecimalNumber(5, -5), IsAbsolute: false, "±0.005 %", Certainty.Medium),
            _ => null,
        };
    }

    private static Tolerance Even(ulong hundredths, string percent, Certainty confidence) =>
        new(new DecimalNumber(hundredths, -4), new DecimalNumber(hundredths, -4), IsAbsolute: false, $"±{percent} %", confidence);

    private static Tolerance Uneven(ulong above, ulong below, Certainty confidence) =>
        new(new DecimalNumber(below, -2), new DecimalNumber(above, -2), IsAbsolute: false, $"+{above}/−{below} %", confidence);
}
