using System.Globalization;

namespace Catalogue.Domain.Components.Lists;

/// <summary>The columns of a list with what they mean, loose and competing headers settled by the cells below.</summary>
internal sealed class ListColumns
{
    private const int RowsLookedAt = 200;

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
        var meanings = new ColumnMeaning?[words.Length];
        for (var i = 0; i < words.Length; i++)
        {
            meanings[i] = words[i] is { IsLoose: false } word ? word.Meaning : null;
        }
        KeepHighest(words, meanings, ColumnMeaning.Designators, single: true);
        KeepHighest(words, meanings, ColumnMeaning.Quantity, single: true);
        KeepHighest(words, meanings, ColumnMeaning.Value, single: true);
        KeepHighest(words, meanings, ColumnMeaning.Package, single: true);
        KeepHighest(words, meanings, ColumnMeaning.Description, single: true);
        KeepHighest(words, meanings, ColumnMeaning.Role, single: true);
        KeepHighest(words, meanings, ColumnMeaning.PartNumber, single: false);
        KeepHighest(words, meanings, ColumnMeaning.Maker, single: false);
        foreach (var i in Enumerable.Range(0, words.Length).Where(column => words[column] is { IsLoose: true }).OrderByDescending(column => words[column]!.Rank))
        {
            meanings[i] = SettleLoose(words[i]!, CellsOf(body, i), meanings);
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
        if (Free(ColumnMeaning.Designators) && cells.Count(DesignatorList.LooksLikeDesignators) * 2 > cells.Count)
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

    private static void KeepHighest(HeaderWord?[] words, ColumnMeaning?[] meanings, ColumnMeaning meaning, bool single)
    {
        var highest = -1;
        for (var i = 0; i < words.Length; i++)
        {
            if (meanings[i] == meaning)
            {
                highest = Math.Max(highest, words[i]!.Rank);
            }
        }
        var taken = false;
        for (var i = 0; i < words.Length; i++)
        {
            if (meanings[i] != meaning)
            {
                continue;
            }
            if (words[i]!.Rank < highest || (single && taken))
            {
                meanings[i] = null;
            }
            else
            {
                taken = true;
            }
        }
    }
}
