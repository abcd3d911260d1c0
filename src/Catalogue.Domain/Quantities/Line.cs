namespace Catalogue.Domain.Quantities;

/// <summary>Holds computed values against lines, so that a value on the line by hand is on it here.</summary>
internal static class Line
{
    // Wider than the noise of a handful of multiplications, narrower than anything that is measured.
    private const double Noise = 1e-9;

    /// <summary>True when a value lies below a line by more than the noise of the computation; a value on the line meets it.</summary>
    public static bool IsBelow(double value, double line) => value < line - (Noise * Math.Max(1, Math.Abs(line)));
}
