namespace Catalogue.Domain.Tests;

/// <summary>The tables of worked examples in the documents beside the code.</summary>
internal static class DocumentTable
{
    /// <summary>The cells of the first table below a heading, without backticks; a backslash before a bar keeps it in its cell.</summary>
    public static TheoryData<string[]> Rows(string document, string heading) =>
    [
        .. File.ReadAllLines(FigurePages.Find(document))
            .SkipWhile(line => line != heading)
            .SkipWhile(line => !line.StartsWith('|'))
            .TakeWhile(line => line.StartsWith('|'))
            .Skip(2)
            .Select(line => line.Trim('|').Replace("\\|", "\u0001", StringComparison.Ordinal).Split('|').Select(Cell).ToArray()),
    ];

    private static string Cell(string text) => text.Trim().Trim('`').Replace('\u0001', '|');
}
