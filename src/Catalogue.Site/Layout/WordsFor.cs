using System.Globalization;

namespace Catalogue.Site.Layout;

/// <summary>Counts in running text.</summary>
internal static class WordsFor
{
    /// <summary>Such as <c>1 teardown</c> and <c>1,204 teardowns</c>; the plural is the word with an s unless it is given.</summary>
    public static string Count(int count, string word, string? plural = null) => $"{Number(count)}\u00A0{(count == 1 ? word : plural ?? word + "s")}";

    /// <summary>A whole number, in groups of three from five digits on.</summary>
    public static string Number(int count) => count.ToString(Math.Abs(count) < 10_000 ? "0" : "#,0", CultureInfo.InvariantCulture);

    /// <summary>Such as <c>a</c>, <c>a and b</c>, <c>a, b and c</c>.</summary>
    public static string List(IReadOnlyList<string> words) => words.Count < 2 ? string.Concat(words) : $"{string.Join(", ", words.SkipLast(1))} and {words[^1]}";

    /// <summary>The words with a capital at the start.</summary>
    public static string Capital(string words) => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];
}
