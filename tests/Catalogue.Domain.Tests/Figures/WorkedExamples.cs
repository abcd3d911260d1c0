using System.Globalization;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Tests.Figures;

/// <summary>The worked examples of a page in docs/figures: the rows of the table below one of its headings, each cell by its column.</summary>
public static class WorkedExamples
{
    /// <summary>The rows; a cell that says <c>none</c> is left out.</summary>
    public static IEnumerable<TheoryDataRow<IReadOnlyDictionary<string, string>>> Of(string page, string heading = "Worked examples")
    {
        var table = File.ReadAllLines(FigurePages.Find(page)).SkipWhile(line => line.TrimStart('#', ' ') != heading || !line.StartsWith('#')).Skip(1).TakeWhile(line => !line.StartsWith('#')).Where(line => line.StartsWith('|')).ToList();
        Assert.True(table.Count > 2, $"{page} has no table under “{heading}”.");
        var columns = Cells(table[0]);
        foreach (var (line, number) in table.Skip(2).Select((line, index) => (line, index + 1)))
        {
            var row = columns.Zip(Cells(line)).Where(pair => pair.Second != "none").ToDictionary(pair => pair.First, pair => pair.Second, StringComparer.Ordinal);
            yield return new TheoryDataRow<IReadOnlyDictionary<string, string>>(row) { TestDisplayName = string.Create(CultureInfo.InvariantCulture, $"{page} {number}") };
        }
    }

    /// <summary>The number in a column, known by measurement and without spread, or null where none is given.</summary>
    public static Given? Given(this IReadOnlyDictionary<string, string> row, string column) => row.ContainsKey(column) ? new Given(Interval.Exactly(row.Number(column)), Evidence.Measured, null) : null;

    /// <summary>The number in a column.</summary>
    public static double Number(this IReadOnlyDictionary<string, string> row, string column) => double.Parse(row[column], CultureInfo.InvariantCulture);

    /// <summary>The whole number in a column, or 1 where none is given.</summary>
    public static int Count(this IReadOnlyDictionary<string, string> row, string column) => row.TryGetValue(column, out var text) ? int.Parse(text, CultureInfo.InvariantCulture) : 1;

    /// <summary>Equal to six digits.</summary>
    public static void Near(double expected, double actual) => Assert.InRange(actual, expected - (Math.Abs(expected) * 1e-5) - 1e-12, expected + (Math.Abs(expected) * 1e-5) + 1e-12);

    private static List<string> Cells(string line) => [.. line.Trim('|').Split('|', StringSplitOptions.TrimEntries)];
}
