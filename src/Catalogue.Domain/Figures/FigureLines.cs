using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Figures;

/// <summary>The lines that one figure is held against, in the figure's own unit.</summary>
/// <param name="MoreIsBetter">True when values below a line are on its wrong side.</param>
/// <param name="Rating">The part's own rating, or null when the figure is held against no line.</param>
/// <param name="Guideline">The guideline, or null where there is none: the rating alone counts then.</param>
/// <param name="Ample">The ample line, a house rule; null when there is none.</param>
public sealed record FigureLines(bool MoreIsBetter, double? Rating, double? Guideline, double? Ample)
{
    /// <summary>No line: the figure is a fact, not a margin.</summary>
    public static FigureLines None(bool moreIsBetter) => new(moreIsBetter, null, null, null);

    /// <summary>Where an interval lies.</summary>
    /// <param name="value">The figure.</param>
    /// <param name="leavesStressOut">True when a known stress is left out, so that it is at best adequate.</param>
    public Verdict Judge(Interval value, bool leavesStressOut)
    {
        if (Rating is not { } rating)
            return Verdict.NoLine;
        if (IsBeyond(value.Nominal, rating))
            return Verdict.OverRating;
        var line = Guideline ?? rating;
        if (IsBeyond(value.Nominal, line))
            return Verdict.OverGuideline;
        var worst = MoreIsBetter ? value.Low : value.High;
        if (IsBeyond(worst, line))
            return Verdict.Thin;
        return Ample is { } ample && !IsBeyond(worst, ample) && !leavesStressOut ? Verdict.Ample : Verdict.Adequate;
    }

    /// <summary>Where they lie, or null when there is none.</summary>
    internal LineMarks? Marks => Rating is null ? null : new LineMarks(Rating, Guideline, Ample, MoreIsBetter);

    /// <summary>True when a value is on the wrong side of a line by more than the noise of the computation; a value on the line meets it.</summary>
    public bool IsBeyond(double value, double line) =>
        MoreIsBetter ? Line.IsBelow(value, line) : Line.IsBelow(-value, -line);
}
