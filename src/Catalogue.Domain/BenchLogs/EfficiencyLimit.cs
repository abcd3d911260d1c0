namespace Catalogue.Domain.BenchLogs;

/// <summary>A limit of a scheme.</summary>
/// <param name="Value">A ratio for an efficiency, watt for a no-load power.</param>
/// <param name="Source">Where it stands.</param>
/// <param name="IsCrossChecked">
/// False where the limit comes from one copy of the text only: it may be shown with its source and corrected, not taken for settled.
/// </param>
public sealed record EfficiencyLimit(double Value, string Source, bool IsCrossChecked);
