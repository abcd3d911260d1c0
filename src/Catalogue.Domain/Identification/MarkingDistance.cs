namespace Catalogue.Domain.Identification;

/// <summary>How far a mark as read lies from a number, weighing characters that look alike.</summary>
/// <remarks>
/// House rule: weighted edit distance. Exchanging costs <see cref="LookAlikes.Cost"/>, leaving out or putting in a character 1, a separator
/// (<c>- _ / . : # +</c>, blank) 0.05. Similarity is 1 - cost / (length of the longer one).
/// </remarks>
public static class MarkingDistance
{
    private const double SeparatorCost = 0.05;
    private const string Separators = "-_/.:#+ ";

    /// <summary>One step of the comparison.</summary>
    /// <param name="Observed">The character as read, or null where it is missing.</param>
    /// <param name="Expected">The number's character, or null where one too many was read.</param>
    public readonly record struct Step(char? Observed, char? Expected)
    {
        /// <summary>True where the two are the same.</summary>
        public bool IsEqual => Observed == Expected;
    }

    /// <summary>The cost of reading one text for the other, from 0 (equal). Both folded (<see cref="MarkingFold.Line"/>), at most 500 characters.</summary>
    public static double Cost(string observed, string number) => Fill(observed, number)[observed.Length, number.Length];

    /// <summary>1 for equal texts, lower with every difference, never below 0; two empty texts are equal.</summary>
    public static double Similarity(string observed, string number)
    {
        ArgumentNullException.ThrowIfNull(observed);
        ArgumentNullException.ThrowIfNull(number);
        var longest = Math.Max(observed.Length, number.Length);
        return longest == 0 ? 1 : Math.Max(0, 1 - (Cost(observed, number) / longest));
    }

    /// <summary>The cheapest way to read one text for the other, character by character in reading order.</summary>
    public static IReadOnlyList<Step> Steps(string observed, string number)
    {
        var costs = Fill(observed, number);
        var steps = new List<Step>(observed.Length + number.Length);
        var (i, j) = (observed.Length, number.Length);
        while (i > 0 || j > 0)
        {
            var here = costs[i, j];
            if (i > 0 && j > 0 && here == costs[i - 1, j - 1] + Exchange(observed[i - 1], number[j - 1]))
                steps.Add(new Step(observed[--i], number[--j]));
            else if (j > 0 && here == costs[i, j - 1] + Gap(number[j - 1]))
                steps.Add(new Step(null, number[--j]));
            else
                steps.Add(new Step(observed[--i], null));
        }

        steps.Reverse();
        return steps;
    }

    private static double[,] Fill(string observed, string number)
    {
        ArgumentNullException.ThrowIfNull(observed);
        ArgumentNullException.ThrowIfNull(number);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(observed.Length, 500);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(number.Length, 500);
        var costs = new double[observed.Length + 1, number.Length + 1];
        for (var i = 1; i <= observed.Length; i++)
            costs[i, 0] = costs[i - 1, 0] + Gap(observed[i - 1]);
        for (var j = 1; j <= number.Length; j++)
            costs[0, j] = costs[0, j - 1] + Gap(number[j - 1]);
        for (var i = 1; i <= observed.Length; i++)
        {
            for (var j = 1; j <= number.Length; j++)
            {
                costs[i, j] = Math.Min(
                    costs[i - 1, j - 1] + Exchange(observed[i - 1], number[j - 1]),
                    Math.Min(costs[i - 1, j] + Gap(observed[i - 1]), costs[i, j - 1] + Gap(number[j - 1])));
            }
        }

        return costs;
    }

    // An unreadable place is no contradiction: it costs the same against anything.
    private static double Exchange(char observed, char expected) =>
        observed == MarkingFold.Unreadable && expected != MarkingFold.Unreadable ? 0.2 : LookAlikes.Cost(observed, expected);

    private static double Gap(char character) => Separators.Contains(character, StringComparison.Ordinal) ? SeparatorCost : 1;
}
