using System.Globalization;
using System.Text.RegularExpressions;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Tests;

namespace Catalogue.Web.Tests.Demo;

/// <summary>A page in docs/figures/demo: its tables of facts, steps, figures and unknown figures, row by row.</summary>
internal sealed partial class PageByHand
{
    private readonly List<Row> _rows = [];
    private readonly string _text;

    private PageByHand(string slug)
    {
        var path = FigurePages.Find(Path.Combine("demo", slug + ".md"));
        _text = File.ReadAllText(path);
        var section = "";
        string[]? columns = null;
        foreach (var line in _text.Split('\n'))
        {
            if (line.StartsWith("## ", StringComparison.Ordinal))
                section = line[3..].Trim();
            if (!line.StartsWith('|'))
                columns = null;
            else if (columns is null)
                columns = Cells(line);
            else if (!line.StartsWith("|---", StringComparison.Ordinal))
                _rows.Add(Row.Of(section, columns, Cells(line)));
        }
    }

    /// <summary>What is recorded of rails and parts.</summary>
    public IEnumerable<Row> Facts => _rows.Where(row => row.Has("How it is known"));

    /// <summary>The sums that go into the sums of the figures.</summary>
    public IEnumerable<Row> Steps => _rows.Where(row => row.Has("Step"));

    /// <summary>The figures that were worked out.</summary>
    public IEnumerable<Row> Figures => _rows.Where(row => row.Has("Verdict"));

    /// <summary>The figures that lack an input.</summary>
    public IEnumerable<Row> Unknown => _rows.Where(row => row.Has("Missing"));

    /// <summary>Every row, so that none is of a kind that is not looked at.</summary>
    public IReadOnlyList<Row> Rows => _rows;

    /// <summary>The sums in the prose.</summary>
    public IEnumerable<Statement> InProse => CodeWithSum().Matches(_text).Select(match => Statement.Of(match.Groups[1].Value));

    /// <summary>The page of a teardown.</summary>
    public static PageByHand Of(string slug) => new(slug);

    private static string[] Cells(string line) => line.Trim().Trim('|').Split('|', StringSplitOptions.TrimEntries);

    [GeneratedRegex("`([^`\n]+ = [^`\n]+)`")]
    private static partial Regex CodeWithSum();

    /// <summary>A row, its cells by column.</summary>
    /// <param name="Section">The heading it stands under.</param>
    /// <param name="Cells">The cells.</param>
    internal sealed record Row(string Section, IReadOnlyDictionary<string, string> Cells)
    {
        private const string AsNominal = "as nominal";

        /// <summary>The rule of the section.</summary>
        public string Rule => FigureRules.All.Single(rule => rule.Title == Section).Code;

        /// <summary>The board and the part, or the rail.</summary>
        public string Subject => Has("Part") ? $"{Cells["Board"]}: {Cells["Part"]}" : Cells["Rail"];

        /// <summary>The one cell of a column.</summary>
        public string this[string column] => Cells[column];

        /// <summary>A row of as many cells as there are columns.</summary>
        public static Row Of(string section, string[] columns, string[] cells)
        {
            Assert.True(columns.Length == cells.Length, $"{section}: {string.Join(" | ", cells)} has {cells.Length} cells of {columns.Length}.");
            return new Row(section, columns.Zip(cells).ToDictionary(pair => pair.First, pair => pair.Second, StringComparer.Ordinal));
        }

        /// <summary>True when the table has the column.</summary>
        public bool Has(string column) => Cells.ContainsKey(column);

        /// <summary>The statement of a case; that of the nominal one where the page says so.</summary>
        public Statement Case(string column) => Statement.Of(Cells[Cells[column] == AsNominal ? "Nominal" : column]);

        /// <summary>Where a line lies, as a number or a sum with its result; null for <c>none</c> and for a table without that line.</summary>
        public double? Line(string column) => !Cells.TryGetValue(column, out var cell) || cell == "none" ? null
            : cell.Contains('=', StringComparison.Ordinal) ? Statement.Of(cell).Value : WrittenSum.Of(cell);

        /// <summary>Every cell that states a sum with its result.</summary>
        public IEnumerable<Statement> Statements => Cells.Values.Where(cell => cell.Contains(" = ", StringComparison.Ordinal) && !cell.Contains('`', StringComparison.Ordinal)).Select(Statement.Of);
    }

    /// <summary>A sum with the result that is stated for it, such as <c>35 × 0.75 = 26.25 A</c>.</summary>
    /// <param name="Sum">The sum as written.</param>
    /// <param name="Value">The result as printed.</param>
    /// <param name="Rounding">Half of the last printed digit.</param>
    /// <param name="Unit">The unit behind it, or empty.</param>
    internal sealed partial record Statement(string Sum, double Value, double Rounding, string Unit)
    {
        /// <summary>Reads a statement.</summary>
        public static Statement Of(string text)
        {
            Assert.True(Stated().Match(text) is { Success: true }, $"“{text}” is no sum with its result.");
            var parts = Stated().Match(text).Groups;
            var digits = parts["digits"].Value;
            var decimals = digits.Contains('.', StringComparison.Ordinal) ? digits.Length - digits.IndexOf('.', StringComparison.Ordinal) - 1 : 0;
            Assert.Matches("[-−+×·÷*/^√(]", parts["sum"].Value);
            return new Statement(
                parts["sum"].Value,
                double.Parse(digits, CultureInfo.InvariantCulture) * (parts["minus"].Success ? -1 : 1),
                0.5 * Math.Pow(10, -decimals) * (1 + 1e-9),
                parts["unit"].Value);
        }

        /// <summary>The unit, or null for one that is not the program's.</summary>
        public Unit? UnitOf => UnitSymbols.Find(Unit is "" ? "ratio" : Unit);

        /// <summary>The numbers in the sum, without signs.</summary>
        public IEnumerable<double> Numbers => Number().Matches(Sum).Select(match => double.Parse(match.ValueSpan, CultureInfo.InvariantCulture));

        /// <summary>True when a value, rounded as the result is, is the result.</summary>
        public bool Is(double value) => Math.Abs(value - Value) <= Rounding;

        [GeneratedRegex(@"^(?<sum>.+?) = (?<minus>−)?(?<digits>\d+(\.\d+)?)( (?<unit>\S+))?$")]
        private static partial Regex Stated();

        [GeneratedRegex(@"\d+(\.\d+)?")]
        private static partial Regex Number();
    }
}
