namespace Catalogue.Domain.Figures;

/// <summary>A line that a lab may change.</summary>
/// <param name="Code">Its lasting code.</param>
/// <param name="Name">What it limits.</param>
/// <param name="Own">What the lab has set, or null while the default stands.</param>
/// <param name="Preset">The default, or null where the practice has none or it depends on more than is known here.</param>
/// <param name="Source">Where the default comes from.</param>
/// <param name="Lowest">The lowest value it may have.</param>
/// <param name="Highest">The highest value it may have.</param>
public sealed record LineRow(string Code, string Name, double? Own, double? Preset, string Source, double Lowest, double Highest);
