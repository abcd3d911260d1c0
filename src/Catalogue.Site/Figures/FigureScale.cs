using System.Globalization;
using Catalogue.Domain.Figures;

namespace Catalogue.Site.Figures;

/// <summary>The scale that one kind of figure shares on a page.</summary>
/// <param name="From">The value at the left end.</param>
/// <param name="To">The value at the right end.</param>
/// <param name="Step">From one graduation to the next.</param>
/// <param name="Line">The line figures are held against, or null where they have none or each its own.</param>
/// <param name="MoreIsBetter">True when values below the line are on the wrong side.</param>
public sealed record FigureScale(double From, double To, double Step, double? Line, bool MoreIsBetter)
{
    private static readonly (double From, double To, double Step)[] Headrooms =
        [(0.4, 2, 0.2), (0.4, 2.8, 0.4), (0.4, 3.6, 0.4), (0, 2, 0.2), (0, 3, 0.5), (0, 4, 0.5), (0, 6, 1), (0, 10, 2)];

    private static readonly (double From, double To, double Step)[] Margins = [(0, 1, 0.2), (-0.2, 1, 0.2), (-0.6, 1, 0.2), (-1, 1, 0.5), (-3, 1, 1)];

    /// <summary>The scale that holds all values and their lines; what lies beyond the widest is drawn as an arrow.</summary>
    public static FigureScale For(IReadOnlyCollection<FigureView> figures)
    {
        ArgumentNullException.ThrowIfNull(figures);
        var marks = figures.Select(figure => figure.Working.Marks).OfType<LineMarks>().ToList();
        var lines = marks.Select(LineOf).Distinct().ToList();
        return For(figures.SelectMany(figure => new[] { figure.Low, figure.Nominal, figure.High }), lines, marks.Count == 0 || marks[0].MoreIsBetter);
    }

    /// <summary>The scale for values that share a line.</summary>
    public static FigureScale For(IEnumerable<double?> values, double line) => For(values, [line], moreIsBetter: true);

    /// <summary>The line that decides: the guideline, else the rating.</summary>
    public static double? LineOf(LineMarks? marks) => marks?.Guideline ?? marks?.Rating;

    private static FigureScale For(IEnumerable<double?> values, IReadOnlyList<double?> lines, bool moreIsBetter)
    {
        var line = lines is [var only] ? only : null;
        var known = values.Concat(lines).OfType<double>().Order().ToList();
        // A margin is at most 1, and so is its line; a headroom's line is 1.
        var choices = lines.Count > 0 && lines.All(one => one < 1) && known[^1] <= 1 ? Margins : known.Count == 0 || known[^1] <= Headrooms[^1].To || lines.Contains(1) ? Headrooms : null;
        if (choices is not null)
        {
            var (from, to, step) = choices.FirstOrDefault(choice => known.All(value => value >= choice.From && value <= choice.To), choices[^1]);
            return new FigureScale(from, to, step, line, moreIsBetter);
        }

        var width = Round((known[^1] - Math.Min(0, known[0])) / 5);
        return new FigureScale(Math.Floor(Math.Min(0, known[0]) / width) * width, Math.Ceiling(known[^1] / width) * width, width, line, moreIsBetter);
    }

    /// <summary>The graduations, from left to right.</summary>
    public IEnumerable<double> Graduations => Enumerable.Range(0, (int)Math.Round((To - From) / Step) + 1).Select(i => Math.Round(From + (i * Step), 6));

    /// <summary>Where a value lies, as a percentage of the width, 0 to 100.</summary>
    public double Percent(double value) => Math.Clamp((value - From) / (To - From) * 100, 0, 100);

    /// <summary>Where a value lies, as SVG writes it.</summary>
    public string At(double value) => Written(Percent(value));

    /// <summary>A percentage as SVG writes it.</summary>
    public static string Written(double percent) => percent.ToString("0.##", CultureInfo.InvariantCulture) + "%";

    /// <summary>A graduation's label, with as many decimals as its neighbours.</summary>
    public string Label(double graduation) => graduation.ToString(Step % 1 == 0 ? "0" : "0.0", CultureInfo.InvariantCulture).Replace('-', '\u2212');

    // 1, 2 or 5 times a power of ten.
    private static double Round(double step)
    {
        var power = Math.Pow(10, Math.Floor(Math.Log10(step)));
        return (step / power) switch
        {
            <= 1 => power,
            <= 2 => 2 * power,
            <= 5 => 5 * power,
            _ => 10 * power,
        };
    }
}
