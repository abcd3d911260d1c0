namespace Catalogue.Domain.Figures;

/// <summary>Where the lines of a figure lie, in its own unit, for drawings.</summary>
/// <param name="Rating">The part's own rating, or null.</param>
/// <param name="Guideline">The guideline, or null where none applies.</param>
/// <param name="Ample">The ample line, or null.</param>
/// <param name="MoreIsBetter">True when values below a line are on its wrong side.</param>
public sealed record LineMarks(double? Rating, double? Guideline, double? Ample, bool MoreIsBetter);
