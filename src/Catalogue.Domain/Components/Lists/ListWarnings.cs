using System.Globalization;

namespace Catalogue.Domain.Components.Lists;

/// <summary>Collects what a person should know; equal remarks about several rows become one sentence that names the rows, and their sheet.</summary>
internal sealed class ListWarnings(string? sheet = null)
{
    /// <summary>How many rows one sentence names before it only counts them.</summary>
    public const int NamedRows = 40;

    private const int MostSentences = 1000;

    private readonly List<string> _file = [];
    private readonly List<string> _order = [];
    private readonly Dictionary<string, List<int>> _rows = new(StringComparer.Ordinal);
    private int _leftOut;

    /// <summary>Adds a sentence about the whole of what is read.</summary>
    public void AddFile(string sentence)
    {
        if (_file.Count < MostSentences)
        {
            _file.Add(sheet is null ? sentence : $"Sheet “{sheet}”: {sentence}");
        }
        else
        {
            _leftOut++;
        }
    }

    public void AddFile(IEnumerable<string> sentences)
    {
        foreach (var sentence in sentences)
        {
            AddFile(sentence);
        }
    }

    public void AddRow(int line, string remark)
    {
        if (!_rows.TryGetValue(remark, out var rows))
        {
            if (_order.Count >= MostSentences)
            {
                _leftOut++;
                return;
            }
            _order.Add(remark);
            _rows[remark] = rows = [];
        }
        if (rows.Count == 0 || rows[^1] != line)
        {
            rows.Add(line);
        }
    }

    /// <summary>Adds a sentence about several rows that is no remark on each of them.</summary>
    public void AddRows(IReadOnlyList<int> lines, string sentence)
    {
        if (lines.Count > 0)
        {
            _file.Add($"{Rows(lines, sheet)}: {sentence}");
        }
    }

    /// <summary>The rows in words: <c>Row 3</c>, <c>Rows 3, 4 of “main”</c>.</summary>
    public static string Rows(IReadOnlyList<int> rows, string? sheet)
    {
        var named = string.Join(", ", rows.Take(NamedRows).Select(row => row.ToString(CultureInfo.InvariantCulture)));
        return $"Row{(rows.Count == 1 ? "" : "s")} {named}{(rows.Count > NamedRows ? " and more" : "")}{(sheet is null ? "" : $" of “{sheet}”")}";
    }

    public IReadOnlyList<string> All()
    {
        var all = new List<string>(_file);
        all.AddRange(_order.Select(remark => $"{Rows(_rows[remark], sheet)}: {remark}."));
        if (_leftOut > 0)
        {
            all.Add(string.Create(CultureInfo.InvariantCulture, $"{_leftOut} more remarks stand at the rows."));
        }
        return all;
    }
}
