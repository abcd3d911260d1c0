namespace Catalogue.Domain.BenchLogs;

/// <summary>A part of a recording that the log itself numbers or names. What lies between two parts belongs to neither.</summary>
/// <param name="Name">Its number or name as written.</param>
/// <param name="Samples">How many samples it has, from 1.</param>
/// <param name="DurationS">From its first sample to its last in seconds; null where time goes back inside it or is not known.</param>
/// <param name="ChargeAh">Charge in ampere-hours, or null.</param>
/// <param name="EnergyWh">Energy in watt-hours, or null.</param>
public sealed record BenchLogSegment(string Name, long Samples, double? DurationS, double? ChargeAh, double? EnergyWh);
