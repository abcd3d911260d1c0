namespace Catalogue.Domain.BenchLogs;

/// <summary>What went in and what came out, over the samples that have both.</summary>
/// <param name="InputWh">Energy at the input in watt-hours.</param>
/// <param name="OutputWh">Energy at the output in watt-hours.</param>
/// <param name="Ratio">
/// Output energy by input energy, not the mean of the ratios of single samples; null where the input's energy is not above zero. Above 1 it is
/// reported and warned about: then a column, a sign or a calibration is wrong, or stored energy is in play.
/// </param>
public sealed record BenchLogEfficiency(double InputWh, double OutputWh, double? Ratio);
