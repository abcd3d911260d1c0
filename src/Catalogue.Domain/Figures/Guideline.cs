namespace Catalogue.Domain.Figures;

/// <summary>A guideline: how much of a rating is used by good practice.</summary>
/// <param name="Code">The lasting code of its row in the table of lines, such as <c>blade_fuse_current</c>.</param>
/// <param name="Factor">The share of the rating, above 0 to 1.</param>
/// <param name="Words">How it is named beside a figure.</param>
/// <param name="Source">Where it comes from and how sure that is; says when the lab has changed it.</param>
public sealed record Guideline(string Code, double Factor, string Words, string Source);
