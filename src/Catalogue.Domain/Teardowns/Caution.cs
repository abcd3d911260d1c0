using Catalogue.Domain.Rails;

namespace Catalogue.Domain.Teardowns;

/// <summary>A caution that the recorded facts call for.</summary>
/// <param name="Key">A lasting code: <c>charged_capacitor</c>, <c>charged_capacitor_serious</c>, <c>charged_capacitor_danger</c>, <c>mains</c>, <c>lithium_cells</c>, <c>low_voltage_high_current</c>, <c>hot_part</c>.</param>
/// <param name="Heading">What it is about.</param>
/// <param name="Text">What to keep in mind, with the recorded values.</param>
/// <param name="RailId">The one rail whose stored charge it is about, or null; discharge readings of that rail stand beside it and never take it away.</param>
public sealed record Caution(string Key, string Heading, string Text, RailId? RailId = null);
