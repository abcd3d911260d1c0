namespace Catalogue.Domain.Components.Lists;

/// <summary>Where the header of a list is, and its names.</summary>
/// <param name="Index">Index of the (first) header row among the lines with content.</param>
/// <param name="RowCount">1, or 2 where a second row goes on with the names.</param>
/// <param name="Names">The names as written, blanks at the ends and line breaks out, both rows joined.</param>
/// <param name="FirstNames">The names of the row with the meanings alone.</param>
/// <param name="FieldCount">Fields of the widest header row.</param>
/// <param name="Score">How many different meanings were recognised; a loose word counts half.</param>
internal sealed record ListHeader(int Index, int RowCount, IReadOnlyList<string> Names, IReadOnlyList<string> FirstNames, int FieldCount, double Score)
{
    private const int LinesSearched = 60;
    private const double LeastScore = 1.5;
    private const double CertainScore = 3;

    /// <summary>
    /// Finds the line that names the most columns; null where none names two. Below a line that is a header beyond doubt only the next one is
    /// looked at: what comes later may head a table of its own.
    /// </summary>
    public static ListHeader? Find(IReadOnlyList<ListLine> lines)
    {
        var (best, bestScore) = (-1, 0.0);
        for (var i = 0; i < Math.Min(lines.Count, LinesSearched); i++)
        {
            var score = ScoreOf(lines[i]);
            if (score > bestScore)
            {
                (best, bestScore) = (i, score);
            }
            if (best >= 0 && best < i && IsCertain(lines[best]))
            {
                break;
            }
        }
        if (best < 0)
        {
            return null;
        }
        // A list of one column may be headed by one plain word.
        var least = lines[best].FieldCount == 1 ? 1.0 : LeastScore;
        return bestScore < least ? null : Build(lines, best, bestScore);
    }

    /// <summary>The header in a line that a person named; one row, or two where the next one goes on with the names.</summary>
    public static ListHeader At(IReadOnlyList<ListLine> lines, int lineNumber)
    {
        var index = lines.ToList().FindIndex(line => line.LineNumber == lineNumber);
        return Build(lines, index, ScoreOf(lines[index]));
    }

    /// <summary>True for a line that can only be a header: three kinds of columns by name, no number, and few words that say nothing.</summary>
    public static bool IsCertain(ListLine line)
    {
        var filled = line.Cells.Where(cell => !string.IsNullOrWhiteSpace(cell)).ToList();
        return filled.Count >= CertainScore && !filled.Exists(cell => char.IsAsciiDigit(cell.Trim()[0]))
            && filled.Count(cell => HeaderWords.Find(cell) is not null) * 2 >= filled.Count && ScoreOf(line) >= CertainScore;
    }

    /// <summary>True for a line that says the header once more.</summary>
    public bool IsRepeatedBy(ListLine line)
    {
        var same = 0;
        for (var i = 0; i < line.Cells.Length; i++)
        {
            var cell = line.Cells[i].Trim();
            same += i < FirstNames.Count && cell.Length > 0 && cell.Equals(FirstNames[i], StringComparison.OrdinalIgnoreCase) ? 1 : 0;
        }
        return same >= 2 && same * 2 >= line.Cells.Count(cell => !string.IsNullOrWhiteSpace(cell));
    }

    private static double ScoreOf(ListLine line)
    {
        var found = new Dictionary<ColumnMeaning, double>();
        foreach (var cell in line.Cells)
        {
            if (HeaderWords.Find(cell) is { } word)
            {
                var weight = word.IsLoose ? 0.5 : 1.0;
                found[word.Meaning] = Math.Max(weight, found.GetValueOrDefault(word.Meaning));
            }
        }
        var names = found.Keys.Any(meaning => meaning is ColumnMeaning.Designators or ColumnMeaning.Value or ColumnMeaning.PartNumber
            or ColumnMeaning.Description or ColumnMeaning.RunningNumber or ColumnMeaning.SupplierPartNumber);
        return names ? found.Values.Sum() : 0;
    }

    private static ListHeader Build(IReadOnlyList<ListLine> lines, int index, double score)
    {
        var line = lines[index];
        var below = index + 1 < lines.Count ? lines[index + 1] : null;
        var first = Enumerable.Range(0, Math.Min(line.FieldCount, ComponentList.MaxColumns)).Select(column => Clean(NameOf(line, column, below))).ToList();
        var repeated = first.GroupBy(name => name, StringComparer.OrdinalIgnoreCase)
            .Where(group => group.Count() > 1)
            .Select(group => group.Key)
            .ToHashSet(StringComparer.OrdinalIgnoreCase);
        if (below is { } second && ContinuesNames(second, first, repeated))
        {
            var joined = first.Select((name, column) => Join(name, Clean(second.Cell(column)))).ToList();
            return new ListHeader(index, 2, joined, first, Math.Max(line.FieldCount, second.FieldCount), score);
        }
        if (index > 0 && lines[index - 1].LineNumber == line.LineNumber - 1 && GroupsNames(lines[index - 1], first, repeated))
        {
            var above = lines[index - 1];
            var joined = JoinGroups(above, first, repeated);
            return new ListHeader(index - 1, 2, joined, first, Math.Max(line.FieldCount, above.FieldCount), score);
        }
        return new ListHeader(index, 1, first, first, line.FieldCount, score);
    }

    /// <summary>A name merged over several columns goes for each of them where the row below names them apart.</summary>
    private static string NameOf(ListLine line, int column, ListLine? below)
    {
        var over = line.Merged.FirstOrDefault(merged => merged.Covers(column) && merged.Span.FirstRow == line.LineNumber && merged.Span.LastColumn > merged.Span.FirstColumn);
        return over is not null && below is not null && FilledColumns(below).Count(over.Covers) >= 2 ? over.Text : line.Cell(column);
    }

    /// <summary>A second header row says something only where the first one repeats itself or says nothing.</summary>
    private static bool ContinuesNames(ListLine next, List<string> first, HashSet<string> repeated)
    {
        var filled = FilledColumns(next);
        return filled.Count >= 2 && filled.TrueForAll(column =>
            column < first.Count && (first[column].Length == 0 || repeated.Contains(first[column])) && !char.IsAsciiDigit(next.Cell(column).TrimStart()[0]));
    }

    /// <summary>A row of group names stands above repeated names and is as wide as they are.</summary>
    private static bool GroupsNames(ListLine above, List<string> first, HashSet<string> repeated)
    {
        var filled = FilledColumns(above);
        return filled.Count >= 2 && above.FieldCount == first.Count && filled.Exists(column => first[column].Length > 0 && repeated.Contains(first[column]));
    }

    /// <summary>A group's name stands in its first column and goes for the repeated names to the right of it too.</summary>
    private static List<string> JoinGroups(ListLine above, List<string> first, HashSet<string> repeated)
    {
        var joined = new List<string>(first.Count);
        var group = "";
        for (var column = 0; column < first.Count; column++)
        {
            var own = Clean(above.Cell(column));
            group = own.Length > 0 ? own : group;
            joined.Add(Join(own.Length > 0 || repeated.Contains(first[column]) ? group : "", first[column]));
        }
        return joined;
    }

    private static List<int> FilledColumns(ListLine line) =>
        [.. Enumerable.Range(0, line.Cells.Length).Where(column => !string.IsNullOrWhiteSpace(line.Cells[column]))];

    private static string Join(string first, string second) => (first, second) switch
    {
        (_, "") => first,
        ("", _) => second,
        _ => $"{first} / {second}",
    };

    private static string Clean(string cell) => string.Join(' ', cell.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
