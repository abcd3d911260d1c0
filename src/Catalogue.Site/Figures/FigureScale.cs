using System.Globalization;

namespace Catalogue.Site.Figures;

/// <summary>The scale that one kind of figure shares on a page.</summary>
/// <param name="From">The value at the left end.</param>
/// <param name="To">The value at the right end.</param>
/// <param name="Step">From one graduation to the next.</param>
/// <param name="Line">The line figures are held against, or null.</param>
/// <param name="MoreIsBetter">True when values below the line are on the wrong side.</param>
public sealed record FigureScale(double From, double To, double Step, double? Line, bool MoreIsBetter)
{
    private static readonly (double From, double To, double Step)[] Choices =
        [(0.4, 2, 0.2), (0.4, 2.8, 0.4), (0.4, 3.6, 0.4), (0, 2, 0.2), (0, 3, 0.5), (0, 4, 0.5), (0, 6, 1), (0, 10, 2)];

    /// <summary>The first scale that holds all values, else the widest: what lies beyond it is drawn as an arrow.</summary>
    public static FigureScale For(IEnumerable<double?> values, FigureWords words)
    {
        ArgumentNullException.ThrowIfNull(words);
        var known = values.OfType<double>().ToList();
        var choice = Choices.FirstOrDefault(choice => known.All(value => value >= choice.From && value <= choice.To), Choices[^1]);
        return new FigureScale(choice.From, choice.To, choice.Step, words.Line, words.MoreIsBetter);
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
    public string Label(double graduation) => graduation.ToString(Step % 1 == 0 ? "0" : "0.0", CultureInfo.InvariantCulture);
}
