using System.Globalization;
using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Tests.Samples;

/// <summary>The worked examples in <c>docs/figures</c>.</summary>
internal static class FigureDocument
{
    /// <summary>The rows of the first table under a heading, cell by cell.</summary>
    public static IReadOnlyList<string[]> Rows(string document, string heading)
    {
        string[][] rows =
        [
            .. File.ReadAllLines(FigurePages.Find(document))
                .SkipWhile(line => line != heading)
                .SkipWhile(line => !line.StartsWith('|'))
                .TakeWhile(line => line.StartsWith('|'))
                .Skip(2)
                .Select(line => line.Trim('|').Split('|', StringSplitOptions.TrimEntries)),
        ];
        return rows.Length > 0 ? rows : throw new InvalidDataException($"{document} has no table under “{heading}”.");
    }

    /// <summary>The same as data of a theory.</summary>
    public static TheoryData<string[]> Theory(string document, string heading) => [.. Rows(document, heading)];

    public static double Number(string cell) => double.Parse(cell, CultureInfo.InvariantCulture);

    public static int Count(string cell) => int.Parse(cell, CultureInfo.InvariantCulture);

    /// <summary>A value without spread; null for <c>none</c>.</summary>
    public static Interval? Known(string cell, double unit = 1) => cell == "none" ? null : Interval.Exactly(Number(cell) * unit);
}
