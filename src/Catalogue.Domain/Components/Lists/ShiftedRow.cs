namespace Catalogue.Domain.Components.Lists;

/// <summary>Mends a row that an unquoted separator inside a field has made too wide.</summary>
internal static class ShiftedRow
{
    private const int MostSurplus = 4;

    /// <summary>
    /// Joins neighbouring fields at the place where the row then agrees best with the meaning of its columns; null where no place is better
    /// than the others.
    /// </summary>
    public static (string[] Cells, int Column, string Joined)? Mend(string[] cells, int width, char delimiter, ListColumns columns)
    {
        var surplus = cells.Length - width;
        if (surplus > MostSurplus)
        {
            return null;
        }
        var (best, bestScore, tie) = (-1, 0, false);
        for (var column = 0; column < width; column++)
        {
            var score = Score(Join(cells, column, surplus, delimiter), columns) + (LooksLikeDecimal(cells, column, delimiter) ? 1 : 0);
            if (score > bestScore)
            {
                (best, bestScore, tie) = (column, score, false);
            }
            else if (score == bestScore)
            {
                tie = true;
            }
        }
        if (best < 0 || tie)
        {
            return null;
        }
        var mended = Join(cells, best, surplus, delimiter);
        return (mended, best, mended[best]);
    }

    private static string[] Join(string[] cells, int column, int surplus, char delimiter) =>
        [.. cells[..column], string.Join(delimiter, cells[column..(column + surplus + 1)]), .. cells[(column + surplus + 1)..]];

    private static bool LooksLikeDecimal(string[] cells, int column, char delimiter) =>
        delimiter == ',' && column + 1 < cells.Length
        && cells[column].Length > 0 && char.IsAsciiDigit(cells[column][^1])
        && cells[column + 1].Length > 0 && char.IsAsciiDigit(cells[column + 1][0]);

    private static int Score(string[] cells, ListColumns columns)
    {
        var score = 0;
        var quantity = columns.First(ColumnMeaning.Quantity) is var q and >= 0 && cells[q].Trim().Length > 0 ? WrittenQuantity.Read(cells[q]).Number : null;
        score += quantity is null ? 0 : 2;
        if (columns.First(ColumnMeaning.Designators) is var d and >= 0)
        {
            score += DesignatorList.LooksLikeDesignators(cells[d]) ? 2 : 0;
            score += quantity is not null && DesignatorList.Read(cells[d], quantity).Names.Count == quantity ? 4 : 0;
        }
        if (columns.First(ColumnMeaning.RunningNumber) is var n and >= 0)
        {
            score += cells[n].Trim() is { Length: > 0 } number && number.All(char.IsAsciiDigit) ? 2 : 0;
        }
        if (columns.First(ColumnMeaning.Link) is var l and >= 0)
        {
            score += cells[l].Contains("://", StringComparison.Ordinal) ? 2 : 0;
        }
        return score;
    }
}
