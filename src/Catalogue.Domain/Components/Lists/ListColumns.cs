using System.Globalization;

namespace Catalogue.Domain.Components.Lists;

/// <summary>The columns of a list with what they mean, loose and competing headers settled by the cells below.</summary>
internal sealed class ListColumns
{
    private const int RowsLookedAt = 200;

    private static readonly ColumnMeaning[] OneColumnMeanings =
    [
        ColumnMeaning.Designators, ColumnMeaning.Quantity, ColumnMeaning.Value, ColumnMeaning.Package, ColumnMeaning.Description, ColumnMeaning.Role,
    ];

    private static readonly ColumnMeaning[] SeveralColumnMeanings = [ColumnMeaning.PartNumber, ColumnMeaning.Maker];

    private readonly ColumnMeaning?[] _meanings;
    private readonly Dictionary<ColumnMeaning, List<int>> _byMeaning = [];

    private ListColumns(ListHeader header, ColumnMeaning?[] meanings)
    {
        _meanings = meanings;
        var used = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        var all = new List<ListColumn>();
        for (var i = 0; i < meanings.Length; i++)
        {
            var name = header.Names[i];
            var key = name.Length == 0 ? string.Create(CultureInfo.InvariantCulture, $"column {i + 1}") : name;
            all.Add(new ListColumn(name, Unused(key, used), meanings[i]));
            if (meanings[i] is { } meaning)
            {
                Columns(meaning).Add(i);
            }
        }
        All = all;
    }

    public IReadOnlyList<ListColumn> All { get; }

    /// <summary>The columns of one meaning in file order; empty where there is none.</summary>
    public List<int> Columns(ColumnMeaning meaning) =>
        _byMeaning.TryGetValue(meaning, out var columns) ? columns : _byMeaning[meaning] = [];

    public bool Has(ColumnMeaning meaning) => Columns(meaning).Count > 0;

    public int First(ColumnMeaning meaning) => Columns(meaning) is [var first, ..] ? first : -1;

    public ColumnMeaning? Meaning(int column) => column < _meanings.Length ? _meanings[column] : null;

    public static ListColumns Settle(ListHeader header, IReadOnlyList<ListLine> lines)
    {
        var words = header.Names.Select((name, column) => HeaderWords.Find(header.FirstNames[column]) ?? HeaderWords.Find(name)).ToArray();
        var body = lines.Skip(header.Index + header.RowCount).Take(RowsLookedAt).ToList();
        var cells = Enumerable.Range(0, words.Length).Select(column => CellsOf(body, column)).ToList();
        var meanings = new ColumnMeaning?[words.Length];
        for (var i = 0; i < words.Length; i++)
        {
            meanings[i] = words[i] is { IsLoose: false } word ? word.Meaning : null;
        }
        int RankOf(int column) => cells[column].Count == 0 ? -1 : words[column]!.Rank;
        foreach (var meaning in OneColumnMeanings)
        {
            KeepHighest(meanings, meaning, RankOf, single: true);
        }
        foreach (var meaning in SeveralColumnMeanings)
        {
            KeepHighest(meanings, meaning, RankOf, single: false);
        }
        ReferencesBesideDesignators(words, meanings, cells);
        var loose = Enumerable.Range(0, words.Length).Where(column => words[column] is { IsLoose: true });
        foreach (var i in loose.OrderByDescending(column => words[column]!.Rank))
        {
            meanings[i] = SettleLoose(words[i]!, cells[i], meanings);
        }
        return new ListColumns(header, meanings);
    }

    private static string Unused(string key, HashSet<string> used)
    {
        var free = key;
        for (var uses = 2; !used.Add(free); uses++)
        {
            free = string.Create(CultureInfo.InvariantCulture, $"{key} ({uses})");
        }
        return free;
    }

    private static ColumnMeaning? SettleLoose(HeaderWord word, List<string> cells, ColumnMeaning?[] meanings)
    {
        bool Free(ColumnMeaning meaning) => !Array.Exists(meanings, taken => taken == meaning);
        if (cells.Count > 0 && cells.TrueForAll(IsRunningNumber))
        {
            return ColumnMeaning.RunningNumber;
        }
        if (Free(ColumnMeaning.Designators) && cells.Count(DesignatorList.HasUsualPrefixes) * 2 > cells.Count)
        {
            return ColumnMeaning.Designators;
        }
        return word.Meaning switch
        {
            ColumnMeaning.Designators => Free(ColumnMeaning.Description) ? ColumnMeaning.Description : null,
            // "Item" or "No" beside designators is a running number even where a note stands in between.
            ColumnMeaning.RunningNumber when cells.Count(IsRunningNumber) * 2 > cells.Count || !Free(ColumnMeaning.Designators) => ColumnMeaning.RunningNumber,
            _ when Free(ColumnMeaning.Value) => ColumnMeaning.Value,
            _ => Free(ColumnMeaning.Description) ? ColumnMeaning.Description : null,
        };
    }

    private static List<string> CellsOf(List<ListLine> body, int column) =>
        [.. body.Select(line => line.Cell(column).Trim()).Where(cell => cell.Length > 0 && cell.Any(char.IsLetterOrDigit) && !cell.EndsWith(':'))];

    private static bool IsRunningNumber(string cell) => cell.TrimEnd('.', ')').All(char.IsAsciiDigit);

    /// <summary>Where designators have a better column, “Référence” and its like name the part, unless their cells say otherwise.</summary>
    private static void ReferencesBesideDesignators(HeaderWord?[] words, ColumnMeaning?[] meanings, List<List<string>> cells)
    {
        for (var i = 0; i < words.Length; i++)
        {
            if (words[i] is { Meaning: ColumnMeaning.Designators, IsLoose: false } && meanings[i] is null && cells[i].Count > 0
                && !Array.Exists(meanings, meaning => meaning == ColumnMeaning.PartNumber)
                && cells[i].Count(DesignatorList.HasUsualPrefixes) * 2 <= cells[i].Count)
            {
                meanings[i] = ColumnMeaning.PartNumber;
            }
        }
    }

    /// <summary>Leaves a meaning to the columns of the highest rank; an empty column ranks last, so that a filled one is never passed over for it.</summary>
    private static void KeepHighest(ColumnMeaning?[] meanings, ColumnMeaning meaning, Func<int, int> rankOf, bool single)
    {
        var columns = Enumerable.Range(0, meanings.Length).Where(column => meanings[column] == meaning).ToList();
        if (columns.Count < 2)
        {
            return;
        }
        var highest = columns.Max(rankOf);
        var kept = columns.Where(column => rankOf(column) == highest).Take(single ? 1 : columns.Count).ToHashSet();
        foreach (var column in columns.Where(column => !kept.Contains(column)))
        {
            meanings[column] = null;
        }
    }
}
