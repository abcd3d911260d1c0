namespace Catalogue.Domain.Identification;

/// <summary>How easily one character of a mark is taken for another.</summary>
/// <remarks>
/// House rule: the costs are judgement about laser and ink marks, not a measurement; <c>docs/identification.md</c> lists them. 0 means equal,
/// 1 means that the two are not commonly confused. Symmetric.
/// </remarks>
public static class LookAlikes
{
    /// <summary>The cost of two characters that are not commonly confused.</summary>
    public const double Unlike = 1.0;

    /// <summary>How many places a table has that tells of any character beside any other.</summary>
    internal const int Pairings = Size * Size;

    private const int Size = 36;

    private static readonly (string Pair, double Cost)[] Listed =
    [
        ("0O", 0.10), ("1I", 0.10), ("OQ", 0.15), ("1L", 0.20), ("2Z", 0.20), ("5S", 0.20), ("8B", 0.20),
        ("0Q", 0.25), ("IL", 0.25), ("6G", 0.25), ("OD", 0.30), ("CG", 0.30), ("4A", 0.30), ("UV", 0.30),
        ("0D", 0.35), ("17", 0.35), ("68", 0.35), ("NH", 0.35), ("EF", 0.35), ("PR", 0.35),
        ("DQ", 0.40), ("OC", 0.40), ("IT", 0.40), ("7T", 0.40), ("6B", 0.40), ("83", 0.40), ("9G", 0.40), ("VY", 0.40), ("MN", 0.40), ("KX", 0.40), ("FP", 0.40),
        ("1T", 0.45), ("IJ", 0.45), ("3B", 0.45), ("8S", 0.45), ("MW", 0.45), ("RK", 0.45), ("69", 0.45), ("56", 0.45),
        ("0U", 0.50), ("7Z", 0.50), ("94", 0.50), ("XY", 0.50), ("TY", 0.50), ("DB", 0.50), ("AR", 0.55),
    ];

    private static readonly double[] Costs = Table();

    /// <summary>The pairs that are commonly confused, the likeliest first, each once.</summary>
    public static IReadOnlyList<(string Pair, double Cost)> Pairs => Listed;

    /// <summary>The cost of reading one character for another, 0 to 1; both of A to Z and 0 to 9, else 1 unless equal.</summary>
    public static double Cost(char one, char other)
    {
        if (one == other)
            return 0;
        var (row, column) = (Index(one), Index(other));
        return row < 0 || column < 0 ? Unlike : Costs[Pair(row, column)];
    }

    /// <summary>Where such a table tells of the two; both of A to Z and 0 to 9.</summary>
    internal static int Pair(char one, char other) => Pair(Index(one), Index(other));

    /// <summary>The same for two that are indexes already (<see cref="Index"/>).</summary>
    internal static int Pair(int one, int other) => (one * Size) + other;

    /// <summary>0 to 35 for 0 to 9 and A to Z, else -1.</summary>
    internal static int Index(char character) => character switch
    {
        >= '0' and <= '9' => character - '0',
        >= 'A' and <= 'Z' => character - 'A' + 10,
        _ => -1,
    };

    private static double[] Table()
    {
        var costs = new double[Pairings];
        Array.Fill(costs, Unlike);
        for (var i = 0; i < Size; i++)
            costs[Pair(i, i)] = 0;
        foreach (var (pair, cost) in Listed)
            costs[Pair(pair[0], pair[1])] = costs[Pair(pair[1], pair[0])] = cost;

        return costs;
    }
}
