using System.Globalization;
using System.Text.RegularExpressions;

namespace Catalogue.Domain.Components.Lists;

/// <summary>What a spreadsheet's formula looks at. Nothing is ever worked out.</summary>
internal static partial class CellFormula
{
    private const int Longest = 8192;

    /// <summary>True where a formula in this row reads one cell of the same row, that of the given column, and nothing else.</summary>
    /// <param name="formula">The formula without its equals sign.</param>
    /// <param name="row">Number of its row, from 1.</param>
    /// <param name="column">The column, from 0.</param>
    public static bool ReadsOnly(string formula, int row, int column)
    {
        if (formula.Length > Longest)
        {
            return false;
        }
        var bare = Texts().Replace(formula, "");
        // Another sheet, another workbook, a column of a named table, or a name.
        if (bare.AsSpan().IndexOfAny("!['") >= 0 || Names().IsMatch(bare))
        {
            return false;
        }
        var cells = Cells().Matches(bare);
        return cells.Count > 0 && cells.All(cell => Column(cell.Groups["column"].Value) == column
            && int.TryParse(cell.Groups["row"].Value, NumberStyles.None, CultureInfo.InvariantCulture, out var at) && at == row);
    }

    private static int Column(string letters) => letters.Aggregate(0, (number, letter) => (number * 26) + char.ToUpperInvariant(letter) - 'A' + 1) - 1;

    [GeneratedRegex("\"[^\"]*\"")]
    private static partial Regex Texts();

    [GeneratedRegex(@"(?<![\p{L}\p{Nd}_.$])\$?(?<column>[A-Za-z]{1,3})\$?(?<row>[0-9]{1,7})(?![\p{L}\p{Nd}_.(])")]
    private static partial Regex Cells();

    // A word that is neither a function nor a cell.
    [GeneratedRegex(@"(?<![\p{L}\p{Nd}_.$])(?>[\p{L}_\\][\p{L}\p{Nd}_.]*)(?!\()(?<![A-Za-z]{1,3}[0-9]{1,7})(?<!TRUE|FALSE)")]
    private static partial Regex Names();
}
