using System.Globalization;

namespace Catalogue.Domain.Quantities;

/// <summary>A value with its lowest and highest case. All three are finite, and low ≤ nominal ≤ high.</summary>
public readonly record struct Interval
{
    private Interval(double low, double nominal, double high)
    {
        Low = low;
        Nominal = nominal;
        High = high;
    }

    /// <summary>The lowest case.</summary>
    public double Low { get; }

    /// <summary>The value taken when nothing is said about its spread.</summary>
    public double Nominal { get; }

    /// <summary>The highest case.</summary>
    public double High { get; }

    /// <summary>True when low, nominal and high are all above zero, so that the interval may divide.</summary>
    public bool IsPositive => Low > 0;

    /// <summary>An interval without spread.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Interval Exactly(double value) => Create(value, value, value);

    /// <summary>An interval from its three cases.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite, or they are out of order.</exception>
    public static Interval Create(double low, double nominal, double high) =>
        TryCreate(low, nominal, high)
        ?? throw new ArgumentOutOfRangeException(
            nameof(nominal),
            string.Create(CultureInfo.InvariantCulture, $"{low} / {nominal} / {high} is no interval: finite values, low ≤ nominal ≤ high."));

    /// <summary>An interval from its three cases, or null when a value is not finite or they are out of order.</summary>
    public static Interval? TryCreate(double low, double nominal, double high) =>
        double.IsFinite(low) && double.IsFinite(nominal) && double.IsFinite(high) && low <= nominal && nominal <= high
            ? new Interval(low, nominal, high)
            : null;

    /// <summary>The product of two intervals, each not below zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A factor is negative, or the product is not finite.</exception>
    public static Interval operator *(Interval left, Interval right)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(left.Low, nameof(left));
        ArgumentOutOfRangeException.ThrowIfNegative(right.Low, nameof(right));
        return Create(left.Low * right.Low, left.Nominal * right.Nominal, left.High * right.High);
    }

    /// <summary>The quotient: the lowest case divides the lowest dividend by the highest divisor.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The dividend is negative, the divisor not above zero, or the quotient not finite.</exception>
    public static Interval operator /(Interval left, Interval right)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(left.Low, nameof(left));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(right.Low, nameof(right));
        return Create(left.Low / right.High, left.Nominal / right.Nominal, left.High / right.Low);
    }
}
