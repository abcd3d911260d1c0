namespace Catalogue.Domain.Text;

/// <summary>The order in which people count: numbers inside a text by their value, letters without regard to case. <c>IMG_9</c> comes before <c>IMG_10</c>.</summary>
/// <remarks>A total order: texts that differ only in case or in leading zeros follow each other, the ordinally smaller first. House rule.</remarks>
public sealed class NaturalOrder : IComparer<string>
{
    private NaturalOrder()
    {
    }

    /// <summary>The one instance; it keeps no state.</summary>
    public static NaturalOrder Instance { get; } = new();

    /// <inheritdoc />
    public int Compare(string? x, string? y)
    {
        if (x is null || y is null)
            return (x is null ? 0 : 1) - (y is null ? 0 : 1);
        int i = 0, j = 0;
        while (i < x.Length && j < y.Length)
        {
            int order;
            if (char.IsAsciiDigit(x[i]) && char.IsAsciiDigit(y[j]))
                order = CompareNumbers(TakeNumber(x, ref i), TakeNumber(y, ref j));
            else
                order = char.ToUpperInvariant(x[i++]).CompareTo(char.ToUpperInvariant(y[j++]));
            if (order != 0)
                return order;
        }

        var left = (x.Length - i).CompareTo(y.Length - j);
        return left != 0 ? left : string.CompareOrdinal(x, y);
    }

    private static ReadOnlySpan<char> TakeNumber(string text, ref int at)
    {
        var start = at;
        while (at < text.Length && char.IsAsciiDigit(text[at]))
            at++;
        return text.AsSpan(start..at).TrimStart('0');
    }

    // By length first, so that numbers of any size compare.
    private static int CompareNumbers(ReadOnlySpan<char> x, ReadOnlySpan<char> y) =>
        x.Length != y.Length ? x.Length.CompareTo(y.Length) : x.SequenceCompareTo(y);
}
