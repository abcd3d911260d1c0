namespace Catalogue.Domain.BenchLogs;

/// <summary>Time, charge and energy of a log or of a part of it.</summary>
/// <param name="DurationS">Seconds.</param>
/// <param name="ChargeAh">Ampere-hours, or null.</param>
/// <param name="EnergyWh">Watt-hours, or null.</param>
public sealed record BenchLogSum(double? DurationS, double? ChargeAh, double? EnergyWh);
