namespace Catalogue.Domain.Components.Lists;

/// <summary>What became of one sheet of a workbook.</summary>
/// <param name="Name">The sheet's name.</param>
/// <param name="Rows">Part lines in it, those of a sheet that was not imported included.</param>
/// <param name="IsHidden">True where the workbook does not show the sheet.</param>
/// <param name="NotImported">Why it was not imported, in plain words; null where it was.</param>
public sealed record ListSheet(string Name, int Rows, bool IsHidden, string? NotImported);
