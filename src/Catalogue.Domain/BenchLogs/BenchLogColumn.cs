namespace Catalogue.Domain.BenchLogs;

/// <summary>A column of a bench log as it was understood.</summary>
/// <param name="Name">Its header as written; empty where it has none.</param>
/// <param name="Role">What it stands for.</param>
/// <param name="Unit">The unit its cells are written in, such as <c>mA</c>, or null where it has none or the cells carry their own.</param>
/// <param name="Source">Where the unit was found.</param>
/// <param name="Minimum">The lowest value in the base unit (V, A, W, Ah, Wh, °C); null where the column was not read or holds no number.</param>
/// <param name="Maximum">The highest, likewise.</param>
public sealed record BenchLogColumn(string Name, BenchLogRole Role, string? Unit, BenchLogUnitSource Source, double? Minimum, double? Maximum);
