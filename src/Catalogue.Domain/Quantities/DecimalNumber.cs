using System.Globalization;

namespace Catalogue.Domain.Quantities;

/// <summary>A number as it is written: digits and a power of ten, so that a prefix moves the point and never multiplies.</summary>
/// <remarks><c>4.7 µ</c> is 47 · 10⁻⁷ and becomes the double nearest to it in one rounding; 4.7 · 1e-6 would be rounded twice.</remarks>
internal readonly record struct DecimalNumber(ulong Digits, int Exponent)
{
    private const int LargestExactPower = 22;
    private const ulong LargestExactDigits = 1UL << 53;

    private static readonly double[] Powers = [.. Enumerable.Range(0, LargestExactPower + 1).Select(power => double.Parse("1e" + power.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture))];

    /// <summary>The shortest digits that give the magnitude of a double back.</summary>
    public static DecimalNumber Of(double value)
    {
        Span<char> text = stackalloc char[32];
        if (!double.IsFinite(value) || !Math.Abs(value).TryFormat(text, out var length, "R", CultureInfo.InvariantCulture))
            throw new ArgumentOutOfRangeException(nameof(value), value, "Only a finite value has digits.");
        var (digits, exponent, isAfterPoint) = (0UL, 0, false);
        for (var i = 0; i < length; i++)
        {
            if (text[i] == '.')
            {
                isAfterPoint = true;
            }
            else if (text[i] == 'E')
            {
                exponent += int.Parse(text[(i + 1)..length], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);
                break;
            }
            else
            {
                // 17 digits tell any double; zeros behind them only carry the point.
                if (digits < 100_000_000_000_000_000)
                    (digits, exponent) = ((digits * 10) + (ulong)(text[i] - '0'), exponent - (isAfterPoint ? 1 : 0));
                else
                    exponent += isAfterPoint ? 0 : 1;
            }
        }

        for (; digits != 0 && digits % 10 == 0; exponent++)
            digits /= 10;
        return new DecimalNumber(digits, digits == 0 ? 0 : exponent);
    }

    /// <summary>The number times a power of ten.</summary>
    public DecimalNumber Shift(int powers) => this with { Exponent = Exponent + powers };

    /// <summary>The nearest double; infinite or zero where the number lies outside their range.</summary>
    public double ToDouble()
    {
        if (Digits <= LargestExactDigits)
        {
            if (Exponent == 0)
                return Digits;
            if (Exponent is > 0 and <= LargestExactPower)
                return Digits * Powers[Exponent];
            if (Exponent is < 0 and >= -LargestExactPower)
                return Digits / Powers[-Exponent];
        }

        return Parse(Digits, Exponent);
    }

    /// <summary>The number times (1 − share) and times (1 + share), each rounded once.</summary>
    public (double Low, double High) Spread(DecimalNumber below, DecimalNumber above) => (Times(below, false), Times(above, true));

    /// <summary>The number less and plus another one in the same unit.</summary>
    public (double Low, double High) Around(DecimalNumber below, DecimalNumber above) => (Sum(below, -1), Sum(above, 1));

    private double Times(DecimalNumber share, bool isMore)
    {
        var places = -share.Exponent;
        if (places is < 0 or > 12 || share.Digits > 1_000_000_000_000 || Digits > LargestExactDigits)
            return ToDouble() * (isMore ? 1 + share.ToDouble() : 1 - share.ToDouble());
        var one = (Int128)Power(places);
        return Rounded(Digits * (isMore ? one + share.Digits : one - share.Digits), Exponent + share.Exponent);
    }

    private double Sum(DecimalNumber other, int sign)
    {
        var lowest = Math.Min(Exponent, other.Exponent);
        if (Exponent - lowest > 18 || other.Exponent - lowest > 18)
            return ToDouble() + (sign * other.ToDouble());
        return Rounded((Digits * (Int128)Power(Exponent - lowest)) + (sign * (other.Digits * (Int128)Power(other.Exponent - lowest))), lowest);
    }

    private static double Rounded(Int128 digits, int exponent)
    {
        var magnitude = (UInt128)(digits < 0 ? -digits : digits);
        while (magnitude != 0 && magnitude % 10 == 0)
        {
            magnitude /= 10;
            exponent++;
        }

        var value = magnitude <= ulong.MaxValue ? new DecimalNumber((ulong)magnitude, exponent).ToDouble() : Parse(magnitude, exponent);
        return digits < 0 ? -value : value;
    }

    private static ulong Power(int power)
    {
        var result = 1UL;
        for (; power > 0; power--)
            result *= 10;
        return result;
    }

    private static double Parse<T>(T digits, int exponent)
        where T : ISpanFormattable
    {
        Span<char> text = stackalloc char[56];
        digits.TryFormat(text, out var length, default, CultureInfo.InvariantCulture);
        text[length++] = 'E';
        exponent.TryFormat(text[length..], out var more, default, CultureInfo.InvariantCulture);
        return double.Parse(text[..(length + more)], NumberStyles.Float, CultureInfo.InvariantCulture);
    }
}
