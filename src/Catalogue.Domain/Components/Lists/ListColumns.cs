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

    private ListColumns(IReadOnlyList<ListColumn> all)
    {
        All = all;
        _meanings = [.. all.Select(column => column.Meaning)];
        for (var i = 0; i < _meanings.Length; i++)
        {
            if (_meanings[i] is { } meaning)
            {
                Columns(meaning).Add(i);
            }
        }
    }

    public IReadOnlyList<ListColumn> All { get; }

    /// <summary>The columns of one meaning in file order; empty where there is none.</summary>
    public List<int> Columns(ColumnMeaning meaning) =>
        _byMeaning.TryGetValue(meaning, out var columns) ? columns : _byMeaning[meaning] = [];

    public bool Has(ColumnMeaning meaning) => Columns(meaning).Count > 0;

    public int First(ColumnMeaning meaning) => Columns(meaning) is [var first, ..] ? first : -1;

    public ColumnMeaning? Meaning(int column) => column < _meanings.Length ? _meanings[column] : null;

    /// <summary>The columns of a row as they were understood when it was imported.</summary>
    public static ListColumns Of(IReadOnlyList<ImportedCell> cells) => new([.. cells.Select(cell => new ListColumn(cell.Header, cell.Header, cell.Meaning))]);

    /// <summary>Settles what the columns hold; what a person said goes before what the header says.</summary>
    public static ListColumns Settle(ListHeader header, IReadOnlyList<ListLine> lines, ComponentListOptions options)
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
        var keys = Keys(header);
        Choose(meanings, keys, options);
        return new ListColumns([.. keys.Select((key, column) => new ListColumn(header.Names[column], key, meanings[column]))]);
    }

    private static List<string> Keys(ListHeader header)
    {
        var used = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        return [.. header.Names.Select((name, column) => Unused(name.Length == 0 ? string.Create(CultureInfo.InvariantCulture, $"column {column + 1}") : name, used))];
    }

    private static void Choose(ColumnMeaning?[] meanings, List<string> keys, ComponentListOptions options)
    {
        var chosen = keys.ConvertAll(options.Chosen);
        for (var i = 0; i < meanings.Length; i++)
        {
            if (chosen[i] is [var meaning])
            {
                meanings[i] = meaning;
            }
            // What holds one column of a list is held by the chosen one.
            else if (meanings[i] is { } found && Array.IndexOf(OneColumnMeanings, found) >= 0 && chosen.Exists(other => other is [{ } taken] && taken == found))
            {
                meanings[i] = null;
            }
        }
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
