namespace Catalogue.Domain.Components.Lists;

/// <summary>A sheet as the lines that lists are read from.</summary>
internal static class GridLines
{
    private const int MostMergedRows = 1000;

    /// <summary>The sheet's lines; every one is as wide as the sheet.</summary>
    public static ListSection Of(ListGrid sheet, ListWarnings warnings)
    {
        var removed = 0;
        var rows = sheet.Rows.Select(row => row with { Cells = [.. row.Cells.Select(cell => ListText.WithoutControls(cell, ref removed))] }).ToList();
        if (removed > 0)
        {
            warnings.AddFile(ListText.RemovedControls(removed));
        }
        var width = rows.Max(row => row.Cells.Count);
        var merged = MergedByRow(sheet, rows);
        var (lines, blank) = (new List<ListLine>(rows.Count), new List<int>());
        foreach (var row in rows)
        {
            for (var number = (lines is [.., var last] ? last.LineNumber : row.Number - 1) + 1; number < row.Number && blank.Count <= ListWarnings.NamedRows; number++)
            {
                blank.Add(number);
            }
            var tooLong = row.Cells.Any(cell => cell.Length > ComponentList.MaxCellCharacters) ? "the row has a cell that is longer than what is read" : null;
            lines.Add(new ListLine(row.Number, [.. row.Cells], width, row.TooBig ?? tooLong, false, false)
            {
                Doubts = row.Doubts,
                IsHidden = row.IsHidden,
                Merged = merged.TryGetValue(row.Number, out var cells) ? cells : [],
            });
        }
        return new ListSection([.. lines.Where(line => !line.IsBlank)], [.. blank.Concat(lines.Where(line => line.IsBlank).Select(line => line.LineNumber)).Order()])
        {
            Sheet = sheet.Name,
            HiddenColumns = sheet.HiddenColumns,
        };
    }

    private static Dictionary<int, List<MergedCell>> MergedByRow(ListGrid sheet, List<GridRow> rows)
    {
        var byNumber = rows.ToDictionary(row => row.Number);
        var merged = new Dictionary<int, List<MergedCell>>();
        // One entry for each row that a span reaches into; rows without content need none, and hostile spans of a million rows cost nothing.
        foreach (var span in sheet.Merged)
        {
            if (!byNumber.TryGetValue(span.FirstRow, out var first) || span.FirstColumn >= first.Cells.Count || string.IsNullOrWhiteSpace(first.Cells[span.FirstColumn]))
            {
                continue;
            }
            var cell = new MergedCell(span, first.Cells[span.FirstColumn]);
            for (var row = span.FirstRow; row <= span.LastRow && row - span.FirstRow <= MostMergedRows; row++)
            {
                if (byNumber.ContainsKey(row) && (merged.TryGetValue(row, out var cells) ? cells : merged[row] = []) is { Count: < ComponentList.MaxColumns } there)
                {
                    there.Add(cell);
                }
            }
        }
        return merged;
    }
}
