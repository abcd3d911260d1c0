namespace Catalogue.Domain.Figures;

/// <summary>The lines that headrooms are held against. House rules: display bands, not limits of any standard.</summary>
public static class VerdictLines
{
    /// <summary>A headroom of 1 meets the convention exactly.</summary>
    public const double Headroom = 1.0;

    /// <summary>From here on a headroom is called ample.</summary>
    public const double AmpleHeadroom = 1.5;

    // Wider than the noise of a handful of multiplications, narrower than anything that is measured.
    private const double Noise = 1e-9;

    /// <summary>True when a value lies below a line by more than the noise of the computation; a value on the line meets it.</summary>
    public static bool IsBelow(double value, double line) => value < line - (Noise * Math.Abs(line));
}
