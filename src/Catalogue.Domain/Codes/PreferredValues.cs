namespace Catalogue.Domain.Codes;

/// <summary>The preferred values resistors and capacitors are made in (IEC 60063).</summary>
public static class PreferredValues
{
    private static readonly int[] TwentyFour = [10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91];

    // The series is the rounded geometric one; the published list follows it without exception.
    private static readonly int[] NinetySix = [.. Enumerable.Range(0, 96).Select(index => (int)Math.Round(100 * Math.Pow(10, index / 96.0)))];

    /// <summary>The 96 three-digit numbers of E96, ascending from 100.</summary>
    public static IReadOnlyList<int> E96 => NinetySix;

    /// <summary>True for the two-digit numbers of E24, 10 to 91.</summary>
    public static bool IsE24(int twoDigits) => Array.BinarySearch(TwentyFour, twoDigits) >= 0;

    /// <summary>True for the three-digit numbers of E96, 100 to 976.</summary>
    public static bool IsE96(int threeDigits) => Array.BinarySearch(NinetySix, threeDigits) >= 0;
}
