using System.Text;
using Catalogue.Domain.Components.Lists;

namespace Catalogue.Domain.Articles;

/// <summary>A table of an article that reads as a component list.</summary>
/// <param name="Index">Its place among the article's component lists, from 0.</param>
/// <param name="Rows">How many part lines it has.</param>
/// <param name="Board">The board that the heading above it names, or null where a person must say.</param>
/// <param name="Text">Its cells, parted by tabs, for the reader of component lists.</param>
public sealed record ArticleTable(int Index, int Rows, string? Board, string Text)
{
    /// <summary>The separator of <see cref="Text"/>.</summary>
    public const char Separator = '\t';

    /// <summary>The cells of a table as text for the reader of component lists.</summary>
    public static string TextOf(IEnumerable<IReadOnlyList<string>> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        var text = new StringBuilder();
        foreach (var row in rows)
            text.AppendJoin(Separator, row.Select(Cell)).Append('\n');
        return text.ToString();

        static string Cell(string cell)
        {
            var line = cell.ReplaceLineEndings(" ").Replace(Separator, ' ').Trim();
            return line.Contains('"', StringComparison.Ordinal) ? $"\"{line.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : line;
        }
    }

    /// <summary>The cells as a component list; null where they read as another table. A list names its parts by designators or part numbers.</summary>
    public static ComponentListReading.Read? Read(string text) =>
        ComponentList.Read(Encoding.UTF8.GetBytes(text), null, new ComponentListOptions("UTF-8", Separator)) is ComponentListReading.Read { Rows: [_, ..] } read
            && read.Rows.Count(row => row.Designators.Count > 0 || row.PartNumber is not null) * 2 >= read.Rows.Count
            ? read
            : null;
}
