using System.Globalization;

namespace Catalogue.Domain.Components.Lists;

/// <summary>Collects what a person should know; equal remarks about several rows become one sentence that names the rows.</summary>
internal sealed class ListWarnings
{
    /// <summary>How many rows one sentence names before it only counts them.</summary>
    public const int NamedRows = 40;

    private const int MostSentences = 1000;

    private readonly List<string> _file = [];
    private readonly List<string> _order = [];
    private readonly Dictionary<string, List<int>> _rows = new(StringComparer.Ordinal);
    private int _leftOut;

    public void AddFile(string sentence) => _file.Add(sentence);

    public void AddFile(IEnumerable<string> sentences) => _file.AddRange(sentences);

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

    public static string Rows(IReadOnlyList<int> rows)
    {
        var named = string.Join(", ", rows.Take(NamedRows).Select(row => row.ToString(CultureInfo.InvariantCulture)));
        var more = rows.Count - NamedRows;
        return string.Create(CultureInfo.InvariantCulture, $"Row{(rows.Count == 1 ? "" : "s")} {named}{(more > 0 ? " and more" : "")}");
    }

    public IReadOnlyList<string> All()
    {
        var all = new List<string>(_file);
        all.AddRange(_order.Select(remark => $"{Rows(_rows[remark])}: {remark}."));
        if (_leftOut > 0)
        {
            all.Add(string.Create(CultureInfo.InvariantCulture, $"{_leftOut} more remarks stand at the rows."));
        }
        return all;
    }
}
