using System.Globalization;

namespace Catalogue.Domain.Packages;

/// <summary>A size in plan, in the order in which it was written.</summary>
/// <param name="LengthMm">The first size in millimetre, above 0.</param>
/// <param name="WidthMm">The second size in millimetre, above 0.</param>
public readonly record struct PackageSize(double LengthMm, double WidthMm)
{
    /// <summary>The smaller of the two in millimetre.</summary>
    public double NarrowMm => Math.Min(LengthMm, WidthMm);

    /// <summary>The larger of the two in millimetre.</summary>
    public double LongMm => Math.Max(LengthMm, WidthMm);

    /// <summary>True where both sizes, turned alike, differ by at most that share of the larger one.</summary>
    public bool IsNear(PackageSize other, double share) => IsNear(NarrowMm, other.NarrowMm, share) && IsNear(LongMm, other.LongMm, share);

    /// <summary>Such as <c>3.9x4.9</c>, in millimetre.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{LengthMm}x{WidthMm}");

    private static bool IsNear(double a, double b, double share) => Math.Abs(a - b) <= share * Math.Max(a, b);
}
